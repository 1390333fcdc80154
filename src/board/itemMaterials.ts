import { plainName } from "../settings/names";

/** What an item may be made of, in the words of the board guide and the cautions. */
export const ITEM_MATERIALS = [
  "paper",
  "parchment",
  "leather",
  "photograph",
  "film",
  "textile",
  "wool and silk",
  "metal",
  "wood",
  "glass",
  "ceramic",
  "mixed",
] as const;
export type ItemMaterial = (typeof ITEM_MATERIALS)[number];

export function isItemMaterial(text: string): text is ItemMaterial {
  return (ITEM_MATERIALS as readonly string[]).includes(plainName(text));
}

/** A word of the survey's own for a material. */
export interface MaterialWord {
  readonly word: string;
  readonly material: string;
}

/** What a survey says of an item, with the materials that its own words mean. Letter case does not count. */
export function withMaterials(said: string, words: readonly MaterialWord[]): string {
  const meant = words.filter(({ word }) => said.toLowerCase().includes(word.toLowerCase()));
  return [said, ...meant.map(({ material }) => material)].join(", ");
}

/** Processes that common practice keeps away from an alkaline reserve, whatever else they are. */
export const ALKALI_SENSITIVE = ["cyanotype", "dye transfer"] as const;

/** The trade's other words for each material, in the singular. Common practice, no source. */
const SYNONYMS: Readonly<Record<ItemMaterial, readonly string[]>> = {
  paper: ["paper", "card", "cardboard", "papier mache", "newsprint"],
  parchment: ["parchment", "vellum"],
  leather: ["leather", "goatskin", "calf", "calfskin", "sheepskin", "pigskin", "morocco", "suede", "alum tawed"],
  photograph: [
    ...["photograph", "photo", "photographic print", "albumen", "gelatin silver", "salted paper", "daguerreotype"],
    ...["ambrotype", "tintype", "collodion", "platinotype", "platinum print", "chromogenic", "c print", "polaroid"],
    ...["glass negative", "glass plate negative", "glass plate", "lantern slide", "cyanotype", "dye transfer"],
  ],
  film: ["film", "negative", "microfilm", "microfiche", "transparency", "slide", "nitrate", "acetate"],
  textile: ["textile", "cloth", "cotton", "linen", "canvas", "flag", "embroidery", "tapestry", "lace", "fabric"],
  "wool and silk": ["wool", "woollen", "woolen", "silk", "felt", "fur"],
  metal: ["metal", "brass", "bronze", "copper", "iron", "steel", "silver", "tin", "lead", "pewter", "gold"],
  wood: ["wood", "wooden", "oak", "pine", "mahogany", "bamboo"],
  glass: ["glass"],
  ceramic: ["ceramic", "porcelain", "pottery", "earthenware", "stoneware", "terracotta"],
  mixed: ["mixed", "mixed media", "composite", "various"],
};

/** What a text says of an item. */
export interface SaidOfMaterial {
  readonly materials: ReadonlySet<ItemMaterial>;
  readonly alkaliSensitive: boolean;
}

/** The materials that a free text names; none where it names none of these words. */
export function materialsIn(text: string): SaidOfMaterial {
  const known = remembered.get(text);
  if (known !== undefined) return known;
  const words = ` ${plainName(text).replace(/[^\p{L}\p{N}]+/gu, " ")} `;
  const names = (word: string) => words.includes(` ${word} `) || words.includes(` ${word}s `);
  const materials = new Set(ITEM_MATERIALS.filter((each) => SYNONYMS[each].some(names)));
  const sensitive = ["wool and silk", "leather"] as const;
  const said = {
    materials,
    alkaliSensitive: sensitive.some((each) => materials.has(each)) || ALKALI_SENSITIVE.some(names),
  };
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  remembered.set(text, said);
  return said;
}

/** A survey says the same few words many times. */
const MOST_REMEMBERED = 1000;
const remembered = new Map<string, SaidOfMaterial>();
