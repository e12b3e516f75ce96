// counted is so many of something.
export const counted = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`
