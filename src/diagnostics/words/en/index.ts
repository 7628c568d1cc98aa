import type { Problems } from '../../problems.ts';
import type { Words } from '../../words.ts';
import { calculate } from './calculate.ts';
import { importing } from './import.ts';
import { layout } from './layout.ts';
import { render } from './render.ts';

export const english: Words<Problems> = { ...importing, ...calculate, ...layout, ...render };
