export const draft = {}
