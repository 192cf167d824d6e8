/** Most sizes and ratings are already as the tables write them: the others are worth their replacements. */
const DIGITS = /^\d+$/;

/**
 * A size as the tables write it: "NPS 1-1/2" and "1 1/2" are the same.
 *
 * @param size NPS or DN as typed
 * @returns the size without its prefix, fractions after a blank
 * @example plainSize('NPS 1-1/2') // '1 1/2'
 * @source notation of the flange standards
 */
export function plainSize(size: string): string {
  if (DIGITS.test(size)) return size;
  return size
    .trim()
    .replace(/^(NPS|DN)\s*/i, '')
    .replace('-', ' ')
    .replace(/\s+/g, ' ');
}

/**
 * A class or PN as the tables write it, digits only: "Class 150", "150#" and "150 lb" are the same.
 *
 * @param rating class or PN as typed
 * @returns its digits
 * @example plainRating('Class 150') // '150'
 * @source notation of the flange standards
 */
export function plainRating(rating: string): string {
  if (DIGITS.test(rating)) return rating;
  return rating
    .trim()
    .replace(/^(class|cl\.?|PN)\s*/i, '')
    .replace(/\s*(lb|#)$/i, '');
}
