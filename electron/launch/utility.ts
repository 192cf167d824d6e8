import { parseArgs } from 'node:util';
import { createService } from '../service/service.ts';
import { servePort } from '../transport/port.ts';
import { fileLog } from './log.ts';

/** Electron's utility process: it alone holds the register, and every window has a port to it. */
const { values } = parseArgs({ options: { data: { type: 'string' } } });
if (values.data === undefined) throw new Error('--data FOLDER is needed.');

const clock = () => new Date();
const service = createService({ folder: values.data, clock, log: fileLog(values.data, clock) });

process.parentPort.on('message', ({ data, ports: [port] }) => {
  if (data === 'window' && port !== undefined) servePort(port, service);
  if (data === 'close') void service.close().then(() => process.exit(0));
});
