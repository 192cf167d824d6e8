/** A head in groups of four, so that it can be read off paper and typed. */
export const inFours = (head: string): string => head.replace(/(.{4})(?=.)/g, '$1 ');
