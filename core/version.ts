/** Version of the calculations; frozen into every issued setting so that it can be recomputed years later. */
export const CORE_VERSION = '0.1.0';
