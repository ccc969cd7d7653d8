/** Width of the list of items beside the plan, px; as in styles/items.css. */
export const ITEM_LIST_PX = 400

/** Panels that lie beside the plan in that width, like the list of items. */
export const listPanels: ReadonlySet<string> = new Set(['items', 'critical', 'asSet', 'compare'])
