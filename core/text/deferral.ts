/** Stands on every card and every printed sheet. */
export const DEFERRAL =
  'Calculated from entered data by the methods shown. It does not replace the site procedure, the instructions of the equipment or tool maker, the code or law that applies, or the decision of the competent person responsible for the joint. Where they differ, stop and ask. Not a permit. Not proof of bolt load.';
