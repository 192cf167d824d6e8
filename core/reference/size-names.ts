/** A size as the tables write it: "NPS 1-1/2" and "1 1/2" are the same. */
export function plainSize(size: string): string {
  return size
    .trim()
    .replace(/^(NPS|DN)\s*/i, '')
    .replace('-', ' ')
    .replace(/\s+/g, ' ');
}

/** A class or PN as the tables write it, digits only: "Class 150", "150#" and "150 lb" are the same. */
export function plainRating(rating: string): string {
  return rating
    .trim()
    .replace(/^(class|cl\.?|PN)\s*/i, '')
    .replace(/\s*(lb|#)$/i, '');
}
