/** A stored blank result. LibreOffice takes an empty one for no result at all, and shows #NAME? where it lacks our functions. */
export const SHOWN_BLANK = "\u00a0";
