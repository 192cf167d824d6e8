import { useLayoutEffect, useState } from 'react';
import type { FieldFault } from '../../core/contract/errors.ts';
import { bare } from './faults.ts';

/** The control of a form that a fault's path belongs to; null where the page has none. */
function controlOf(path: string): HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement | null {
  const name = CSS.escape(bare(path));
  return document.querySelector(
    `:is(input, select, textarea):is([name="${name}"], [name="${name}.text"], [id="${name}"], [data-field="${name}"])`,
  );
}

/** What a person reads beside the field; null where the page shows no such field. */
function labelOf(path: string): string | null {
  const control = controlOf(path);
  if (control === null) return groupLabelOf(path);
  const [label] = control.labels ?? [];
  return label?.textContent?.trim() || control.getAttribute('aria-label');
}

/** A fault is named as its field is; the label stands on the page only once it is drawn. */
export function useFieldLabels(faults: readonly FieldFault[]): readonly (string | null)[] {
  const [names, setNames] = useState<readonly (string | null)[]>([]);
  useLayoutEffect(() => setNames(faults.map(({ field }) => labelOf(field))), [faults]);
  return names;
}

/** Choices of several, as people, are a group with a legend. */
function groupLabelOf(path: string): string | null {
  const group = document.querySelector(`fieldset[data-field="${CSS.escape(bare(path))}"]`);
  return group?.querySelector('legend')?.textContent?.trim() || null;
}

/** "data.bolting.studLength" → "bolting, stud length": for a field that no form on the page has. */
export function pathWords(path: string): string {
  return bare(path)
    .split('.')
    .map((part) =>
      /^\d+$/.test(part)
        ? `row ${Number(part) + 1}`
        : part
            .replace(/Ids?$/, '')
            .replaceAll('_', ' ')
            .replace(/([A-Z])/g, ' $1')
            .toLowerCase(),
    )
    .join(', ');
}
