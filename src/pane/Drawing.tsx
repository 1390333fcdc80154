import type { Picture } from "../drawing/picture";
import { svgOf } from "../drawing/svgOf";

/** A picture in the colours of the page. `svgOf` escapes every text. */
export function Drawing({ picture }: { readonly picture: Picture }) {
  return <div class="drawing" dangerouslySetInnerHTML={{ __html: svgOf(picture) }} />;
}
