export const guide = {}
