// In place of the decompressor of WOFF2 fonts, 480 kB: the fonts of src/paper/fonts.ts are TrueType and OpenType.
module.exports = () => {
  throw new Error("WOFF2 fonts are not read");
};
