// One bench in a process of its own: apart.ts SUBJECT FILE. What it measured is written to the file.
import { writeFileSync } from 'node:fs';
import type { Measurement } from './measurement.ts';

const [subject = '', answer = ''] = process.argv.slice(2);
const bench = (await import(`./${subject}.bench.ts`)) as { measure: () => Promise<readonly Measurement[]> };
writeFileSync(answer, JSON.stringify(await bench.measure()));
process.exit(0);
