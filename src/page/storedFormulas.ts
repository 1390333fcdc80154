import { outsideTexts, storedFormula, typedFormula } from "../workbook/formulaText";

/** A formula of the file as it is typed, both without `=`: our names with points, functions without their prefixes. */
export function typedFromStored(formula: string): string {
  return outsideTexts(typedFormula(formula), (piece) =>
    piece.replace(/(?<![\w.])_xlfn\.(?:_xlws\.|_xludf\.)?(?=[A-Z])/gi, "").replace(/(?<![\w.])_xlpm\./gi, ""),
  );
}

/** The reverse of `typedFromStored`. */
export function storedFromTyped(formula: string): string {
  return outsideTexts(storedFormula(formula), (piece) =>
    piece.replace(/(?<![\w.])([A-Z][A-Z0-9.]*)(?=\()/gi, (name: string) => {
      const upper = name.toUpperCase();
      if (SORTED_APART.has(upper)) return `_xlfn._xlws.${upper}`;
      return LATER.has(upper) ? `_xlfn.${upper}` : name;
    }),
  );
}

/**
 * Functions that a file marks as newer than its format. Source: Microsoft, "Issue: An _xlfn. prefix is displayed in front
 * of a formula" (support.microsoft.com), from memory of that list: the common ones of it.
 */
const LATER = new Set(
  (
    "ACOT ACOTH AGGREGATE ARABIC BASE BETA.DIST BETA.INV BINOM.DIST BINOM.INV BYCOL BYROW CEILING.MATH CHISQ.DIST " +
    "CHISQ.INV CHISQ.TEST CHOOSECOLS CHOOSEROWS COMBINA CONCAT CONFIDENCE.NORM CONFIDENCE.T COVARIANCE.P COVARIANCE.S " +
    "DAYS DECIMAL DROP EXPAND EXPON.DIST F.DIST F.INV F.TEST FLOOR.MATH FORMULATEXT GAMMA GAMMA.DIST GAMMA.INV GAUSS " +
    "HSTACK IFNA IFS ISFORMULA ISOWEEKNUM LAMBDA LET MAKEARRAY MAP MAXIFS MINIFS MODE.MULT MODE.SNGL NORM.DIST NORM.INV " +
    "NORM.S.DIST NORM.S.INV NUMBERVALUE PERCENTILE.EXC PERCENTILE.INC PERCENTRANK.EXC PERCENTRANK.INC PERMUTATIONA PHI " +
    "POISSON.DIST QUARTILE.EXC QUARTILE.INC RANDARRAY RANK.AVG RANK.EQ REDUCE RRI SCAN SEQUENCE SHEET SHEETS SKEW.P " +
    "SORTBY STDEV.P STDEV.S SWITCH T.DIST T.INV T.TEST TAKE TEXTAFTER TEXTBEFORE TEXTJOIN TEXTSPLIT TOCOL TOROW UNICHAR " +
    "UNICODE UNIQUE VAR.P VAR.S VSTACK WEIBULL.DIST WRAPCOLS WRAPROWS XLOOKUP XMATCH XOR Z.TEST"
  ).split(" "),
);
const SORTED_APART = new Set(["FILTER", "SORT"]);
