import { Engine, Layer, Scene } from "@univerjs/engine-render";

/** What draws on one canvas, frame by frame. */
interface Painter {
  _renderFunction: (time: number) => void;
  _renderingQueueLaunched: boolean;
  readonly _renderFrameTasks: readonly unknown[];
  readonly getScenes: () => Readonly<Record<string, Scene>>;
  startRenderLoop: () => void;
}

/** A part of a picture: it is dirty when it no longer shows what it should. */
interface Painted {
  readonly scene: Scene;
  makeDirty: (state?: boolean) => unknown;
}

interface Picture {
  addLayer: (...layers: Layer[]) => void;
}

/**
 * Lets the grid ask for a frame when there is something to draw. By itself each of its three canvases asks for every
 * frame of the screen, as long as the page is open: an eighth of a processor for a page that nobody touches.
 */
export function restWhenPainted(): void {
  const painter = Engine.prototype as unknown as Painter;
  const { startRenderLoop: start } = painter;
  const rests = new WeakSet<Painter>();
  painter.startRenderLoop = function () {
    if (!rests.has(this)) {
      rests.add(this);
      const { _renderFunction: paint } = this;
      this._renderFunction = (time) => {
        if (Object.values(this.getScenes()).some((scene) => scene.isDirty())) paint(time);
        else this._renderingQueueLaunched = false;
      };
    }
    start.call(this);
  };
  const wake = (scene: Scene): void => {
    const painting = scene.getEngine() as unknown as Painter | null | undefined;
    if (painting && painting._renderFrameTasks.length > 0) painting.startRenderLoop();
  };
  const layer = Layer.prototype as unknown as Painted;
  const { makeDirty } = layer;
  layer.makeDirty = function (state = true) {
    makeDirty.call(this, state);
    if (state) wake(this.scene);
    return this;
  };
  const picture = Scene.prototype as unknown as Picture;
  const { addLayer } = picture;
  picture.addLayer = function (...layers) {
    addLayer.apply(this, layers);
    wake(this as unknown as Scene);
  };
}
