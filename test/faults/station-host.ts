// A station in a process of its own, to be killed: station-host.ts FOLDER PORT [DATABASE]. Prints its address once it serves.
import { join } from 'node:path';
import { machine } from '../../src/machine.ts';
import { startStation } from '../../src/station/server.ts';

const [folder = '', port = '0', database] = process.argv.slice(2);
const station = await startStation(
  {
    data: join(folder, 'data'),
    packetsRoot: join(folder, 'packets'),
    packets: [],
    port: Number(port),
    lan: false,
    database,
    shop: folder,
    requestsPerSecond: 100_000,
  },
  machine,
  { trouble: trouble => console.error(String(trouble)), pairingCode: () => undefined },
);
console.log(station.address);
