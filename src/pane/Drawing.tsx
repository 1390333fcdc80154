/** A drawing of `src/drawing`, which writes every text escaped. */
export function Drawing({ svg }: { readonly svg: string }) {
  return <div class="drawing" dangerouslySetInnerHTML={{ __html: svg }} />;
}
