/** Invented people; the names belong to nobody. */
export const PEOPLE = [
  { name: 'Ines Marlow', role: 'bolting technician (invented)' },
  { name: 'Tomas Adewin', role: 'bolting technician (invented)' },
  { name: 'Greta Oakfen', role: 'bolting technician (invented)' },
  { name: 'Rahim Solberry', role: 'bolting technician (invented)' },
  { name: 'Pia Wintergate', role: 'bolting supervisor (invented)' },
  { name: 'Joris Haldane-Reed', role: 'tool-room keeper (invented)' },
  { name: 'Mei Fairlock', role: 'integrity engineer (invented)' },
  { name: 'Oskar Brennfield', role: 'turnaround planner (invented)' },
] as const;

export const TECHNICIANS = ['Ines Marlow', 'Tomas Adewin', 'Greta Oakfen', 'Rahim Solberry'] as const;

export const KEEPER = 'Joris Haldane-Reed';
export const ENGINEER = 'Mei Fairlock';
export const SUPERVISOR = 'Pia Wintergate';
