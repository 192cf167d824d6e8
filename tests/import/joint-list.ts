/** The columns a list of joints needs, and two joints under them. */
export const HEADINGS = 'tag,unit,flange standard,size,class,facing';
export const J1 = 'J-1,Unit 100,ASME B16.5,8,300,raised face';
export const J2 = 'J-2,Unit 100,ASME B16.5,6,150,raised face';

export const list = (...lines: string[]) => `${lines.join('\n')}\n`;
