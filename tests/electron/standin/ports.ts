import { EventEmitter } from 'node:events';
import { MessageChannel, type MessagePort } from 'node:worker_threads';

/** A port as the main process sees it: messages come as events with `data`. */
export class MessagePortMain extends EventEmitter {
  readonly port: MessagePort;

  constructor(port: MessagePort) {
    super();
    this.port = port;
  }

  start(): void {
    this.port.on('message', (data: unknown) => this.emit('message', { data, ports: [] }));
  }

  postMessage(message: unknown): void {
    this.port.postMessage(message);
  }

  close(): void {
    this.port.close();
  }
}

export class MessageChannelMain {
  readonly port1: MessagePortMain;
  readonly port2: MessagePortMain;

  constructor() {
    const { port1, port2 } = new MessageChannel();
    this.port1 = new MessagePortMain(port1);
    this.port2 = new MessagePortMain(port2);
  }
}
