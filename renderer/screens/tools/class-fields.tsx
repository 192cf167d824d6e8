import type { ReactNode } from 'react';
import { useWatch } from 'react-hook-form';
import type { ToolClass } from '../../../core/contract/tool.ts';
import { Check, Choice, Quantity, Text } from '../../components/fields.tsx';

const UNKNOWN = 'Leave empty when not known';

const ratedTorque = <Quantity name="properties.ratedTorque" label="Rated torque" quantity="torque" />;
const ratedPressure = <Quantity name="properties.ratedPressure" label="Rated pressure" quantity="pressure" />;
const family = <Text name="properties.family" label="Family" hint="Parts of one family fit each other" />;
const coupling = (
  <Text
    name="properties.coupling"
    label="Coupling"
    hint="The site's name of it; lines of two names don't go together"
  />
);
const headRadius = (
  <Quantity
    name="properties.headRadius"
    label="Head radius"
    quantity="length"
    hint="From the opening's centre to the outside"
  />
);
const reactionArm = (
  <Quantity
    name="properties.reactionArm"
    label="Reaction arm"
    quantity="length"
    hint="From the nut's axis to where the reaction member bears"
  />
);
const opening = (
  <>
    <Quantity
      name="properties.acrossFlats"
      label="Opening, across flats"
      quantity="length"
      hint="As 1-7/16 in"
    />
    <Quantity name="properties.looseness" label="Opening above nominal" quantity="length" hint={UNKNOWN} />
  </>
);
const head = (
  <>
    {opening}
    {ratedTorque}
    {family}
    {headRadius}
    <Quantity name="properties.height" label="Height along the stud" quantity="length" hint={UNKNOWN} />
    <Quantity name="properties.bore" label="Hole for the stud, diameter" quantity="length" hint={UNKNOWN} />
    <Quantity
      name="properties.studRoom"
      label="Room for the stud above the nut"
      quantity="length"
      hint={UNKNOWN}
    />
    <Check name="properties.openThrough" label="Open through the back" />
    {reactionArm}
  </>
);

const FACE_UNITS = [
  { value: 'bar', words: 'bar' },
  { value: 'psi', words: 'psi' },
  { value: 'MPa_pressure', words: 'MPa' },
];

const FIELDS: Readonly<Record<ToolClass, ReactNode>> = {
  'drive unit': (
    <>
      {ratedTorque}
      {ratedPressure}
      {family}
      {headRadius}
      {reactionArm}
      {coupling}
    </>
  ),
  cassette: head,
  'square-drive head': (
    <>
      <Quantity name="properties.square" label="Side of the square" quantity="length" />
      {head}
    </>
  ),
  reducer: (
    <>
      <Quantity name="properties.outerAcrossFlats" label="Outer hex, across flats" quantity="length" />
      {opening}
      {ratedTorque}
    </>
  ),
  pump: (
    <>
      {ratedPressure}
      <Text name="properties.connections" label="Wrenches at once" inputMode="numeric" />
      {coupling}
    </>
  ),
  gauge: (
    <>
      <Quantity name="properties.scaleMax" label="End of scale" quantity="pressure" />
      <Quantity name="properties.graduation" label="Marks every" quantity="pressure" />
      <Quantity
        name="properties.accuracy"
        label="Accuracy"
        quantity="ratio"
        hint="Largest error, of the full scale"
      />
      <Choice
        name="properties.alsoPrinted"
        label="Also on its face"
        options={FACE_UNITS}
        blank="nothing else"
      />
    </>
  ),
  hose: (
    <>
      {ratedPressure}
      <Text name="properties.madeOn" label="Made on" type="date" />
      <Text name="properties.firstUsedOn" label="First used on" type="date" hint={UNKNOWN} />
      {coupling}
    </>
  ),
  coupler: (
    <>
      {ratedPressure}
      {coupling}
    </>
  ),
  'counterhold wrench': (
    <>
      {opening}
      {ratedTorque}
    </>
  ),
  'hand torque wrench': (
    <>
      <Quantity name="properties.least" label="Least torque of the scale" quantity="torque" />
      <Quantity name="properties.most" label="Most torque of the scale" quantity="torque" />
      <Quantity name="properties.torqueGraduation" label="Marks every" quantity="torque" />
      <Quantity name="properties.square" label="Side of the square" quantity="length" hint={UNKNOWN} />
    </>
  ),
};

/** What a tool of the chosen class may stand and what it fits. */
export function ClassFields() {
  const chosen: ToolClass = useWatch({ name: 'properties.class' });
  return FIELDS[chosen];
}

/** Whose tool it is. */
export function OwnerFields() {
  const hired: boolean = useWatch({ name: 'hired' });
  return (
    <>
      <Check name="hired" label="Hired" />
      {hired && (
        <>
          <Text name="hiredFrom" label="Hired from" />
          <Text name="returnBy" label="Goes back by" type="date" hint={UNKNOWN} />
        </>
      )}
      <Quantity name="weight" label="Mass" quantity="mass" hint={UNKNOWN} />
    </>
  );
}
