/** Values that a person typed or chose under some field names; a unit or a standing choice alone is none. */
export function filledIn(
  values: Readonly<Record<string, unknown>>,
  under: readonly string[],
  except: readonly string[] = [],
): number {
  const count = (value: unknown, name: string): number => {
    if (except.includes(name)) return 0;
    const inside = under.some((start) => `${name}.`.startsWith(start)) && !isStanding(name);
    if (typeof value === 'string') return inside && value.trim() !== '' ? 1 : 0;
    if (typeof value !== 'object' || value === null) return 0;
    if ('text' in value && 'unit' in value) return inside && String(value.text).trim() !== '' ? 1 : 0;
    return Object.entries(value).reduce((sum, [key, part]) => sum + count(part, `${name}.${key}`), 0);
  };
  return Object.entries(values).reduce((sum, [name, value]) => sum + count(value, name), 0);
}

/** Choices that always hold something. */
const isStanding = (name: string): boolean => /\.(evidence|area|boltStressArea)$/.test(name);
