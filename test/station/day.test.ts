import { openSqlite } from '../../src/station/ledger/sqlite.ts';
import { daysOnTheFloor } from './day.contract.ts';

daysOnTheFloor('memory', () => openSqlite(':memory:', 'test'));
