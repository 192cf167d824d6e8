import type { KitData, KitInput } from '../../../core/contract/custody.ts';

export interface Named {
  readonly id: string;
  readonly name: string;
}

export interface KitForm {
  name: string;
  reference: string;
  from: string;
  to: string;
  remarks: string;
  closed: boolean;
  tools: Named[];
  joints: Named[];
}

export const emptyKit = (today: string): KitForm => ({
  name: '',
  reference: '',
  from: today,
  to: today,
  remarks: '',
  closed: false,
  tools: [],
  joints: [],
});

interface KitLists {
  readonly data: KitData;
  readonly tools: readonly { readonly id: string; readonly number: string }[];
  readonly joints: readonly { readonly id: string; readonly tag: string }[];
}

export const kitForm = ({ data, tools, joints }: KitLists): KitForm => ({
  name: data.name,
  reference: data.reference,
  from: data.from,
  to: data.to,
  remarks: data.remarks,
  closed: data.closed,
  tools: tools.map(({ id, number }) => ({ id, name: number })),
  joints: joints.map(({ id, tag }) => ({ id, name: tag })),
});

export const kitInput = (form: KitForm): KitInput => ({
  name: form.name,
  reference: form.reference,
  from: form.from,
  to: form.to,
  remarks: form.remarks,
  closed: form.closed,
  toolIds: form.tools.map(({ id }) => id),
  jointIds: form.joints.map(({ id }) => id),
});

/** Other kits on the same days that hold one of the tools. */
export function overlapping<K extends { readonly id: string; readonly data: KitData }>(
  kits: readonly K[],
  kitId: string | null,
  toolId: string,
  from: string,
  to: string,
): K[] {
  return kits.filter(
    ({ id, data }) =>
      id !== kitId && !data.closed && data.toolIds.includes(toolId) && data.from <= to && from <= data.to,
  );
}
