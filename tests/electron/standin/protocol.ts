export type Handler = (request: Request) => Promise<Response>;

export const handlers = new Map<string, Handler>();
export const privileged: unknown[] = [];

export const protocol = {
  registerSchemesAsPrivileged(schemes: unknown[]): void {
    privileged.push(...schemes);
  },
  handle(scheme: string, handler: Handler): void {
    handlers.set(scheme, handler);
  },
};
