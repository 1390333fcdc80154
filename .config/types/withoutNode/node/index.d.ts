// In place of Node's typings, which those of papaparse, pdfkit and fontkit ask for: with these, "node:fs" is a type error.

/** pdfkit and fontkit say Buffer where any bytes serve. */
type Buffer = Uint8Array;

declare namespace NodeJS {
  interface ReadableStream {}
}

declare module "stream" {
  export interface Readable extends NodeJS.ReadableStream {
    on(event: string, listener: (...given: never[]) => void): this;
  }
}
