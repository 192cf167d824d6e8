import type { ToolClass } from '../contract/tool.ts';

/** Classes a setting asks a certificate of, whatever the site's rules say. */
export const CERTIFIED: readonly ToolClass[] = ['drive unit', 'gauge', 'hand torque wrench'];
