/** Menus that the grid leaves out, because a save could not carry what they do. Filled in below. */
export const HIDDEN_MENUS: Readonly<Record<string, { readonly hidden: boolean }>> = {};
