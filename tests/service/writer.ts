import { createService } from '../../electron/service/service.ts';

// A process of its own that saves one unit after the other until it is killed. It says a key before it sends it and
// again when it was answered.
const [folder = ''] = process.argv.slice(2);
const service = createService({
  folder,
  clock: () => new Date(),
  log: (_, message, error) => console.error(message, error),
});

for (let count = 0; ; count += 1) {
  const key = crypto.randomUUID();
  process.stdout.write(`sent ${key} ${count}\n`);
  const answer = await service.handle('unit.save', {
    key,
    id: null,
    version: null,
    data: { name: `Unit ${count}` },
  });
  process.stdout.write(`${answer.ok ? 'done' : `failed ${answer.error.message}`} ${key} ${count}\n`);
}
