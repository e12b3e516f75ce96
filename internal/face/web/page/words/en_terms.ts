export const terms = {}
