import { useState } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { Combobox, type ComboOption } from './combobox.tsx';
import { useFault } from './faults.ts';

const OFFERED = 40;

interface NameFieldProps {
  readonly name: string;
  readonly label: string;
  readonly offers: readonly ComboOption[];
  readonly hint?: string;
}

/** A name to choose from a table, or to write in own words where the table doesn't have it. */
export function NameField({ name, label, offers, hint }: NameFieldProps) {
  const { setValue } = useFormContext();
  const value: string = useWatch({ name }) ?? '';
  const [search, setSearch] = useState('');
  const fault = useFault(name);
  const found = offers.filter((offer) => holds(offer, search)).slice(0, OFFERED);
  return (
    <Combobox
      label={label}
      name={name}
      chosen={value === '' ? null : { id: value, name: value, detail: '' }}
      options={found}
      onSearch={setSearch}
      onChoose={(option) => setValue(name, option?.name ?? '', { shouldDirty: true, shouldTouch: true })}
      none="none"
      ownWords
      hint={offers.find((offer) => offer.name === value)?.detail ?? hint}
      fault={fault?.allowed}
    />
  );
}

/** Every word of the search, in any order. */
function holds({ name, detail }: ComboOption, search: string): boolean {
  const text = `${name} ${detail}`.toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
