import type { PortAnswer, PortRequest, RequestHandler } from '../../core/contract/message.ts';

/** The side of a message port that the utility process holds. */
export interface ServicePort {
  on(event: 'message', listener: (event: { data: unknown }) => void): unknown;
  postMessage(message: PortAnswer): void;
  start(): void;
}

/** Answers the requests of one window until its port closes. */
export function servePort(port: ServicePort, service: RequestHandler): void {
  port.on('message', ({ data }) => {
    // Without an id nothing could be answered to anybody.
    if (!isPortRequest(data)) return;
    const session = typeof data.session === 'string' ? data.session : null;
    void service
      .handle(data.name, data.input, session)
      .then((answer) => port.postMessage({ id: data.id, answer }));
  });
  port.start();
}

function isPortRequest(data: unknown): data is PortRequest {
  if (typeof data !== 'object' || data === null) return false;
  const { id, name } = data as Partial<PortRequest>;
  return Number.isSafeInteger(id) && typeof name === 'string';
}
