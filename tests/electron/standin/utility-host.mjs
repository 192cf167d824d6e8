// Runs a utility process's program in a thread, with process.parentPort as Electron gives it.
import { EventEmitter } from 'node:events';
import { parentPort, workerData } from 'node:worker_threads';

class Port extends EventEmitter {
  constructor(port) {
    super();
    this.port = port;
  }
  start() {
    this.port.on('message', (data) => this.emit('message', { data, ports: [] }));
  }
  postMessage(message) {
    this.port.postMessage(message);
  }
}

const fromMain = new EventEmitter();
process.parentPort = fromMain;
// As in Electron, messages wait until the program listens.
fromMain.once('newListener', () => {
  parentPort.on('message', ({ message, ports }) => {
    fromMain.emit('message', { data: message, ports: ports.map((port) => new Port(port)) });
  });
});
await import(workerData.program);
