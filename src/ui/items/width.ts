/** Width of the list of items beside the plan, px; as in styles/items.css. */
export const ITEM_LIST_PX = 400
