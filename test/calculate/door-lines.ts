import type { Door, DoorSet, Make, Part } from '../../src/calculate/door-set.ts';
import type { Length } from '../../src/units/length.ts';

type In = 'inch' | 'mm';

/** A door as a carpenter writes it down: sizes exact, one line for each thing, parts by the end of their code. */
export function doorLines({ parts }: DoorSet, door: Door, units: In): readonly string[] {
  const size = exactly(units);
  const { gaps, hinges, pull } = door;
  const between = gaps.between === undefined ? '' : ` between ${size(gaps.between)}`;
  const own = parts.filter(part => part.door === door.code);
  return [
    `leaf ${size(door.width.value)} x ${size(door.height.value)}`,
    `gaps left ${size(gaps.left)} right ${size(gaps.right)} top ${size(gaps.top)} bottom ${size(gaps.bottom)}${between}`,
    ...own.flatMap(part => partLines(part, size)),
    ...(hinges.length === 0 ? [] : [`hinges ${hinges.map(hinge => size(hinge.fromTop)).join(', ')}`]),
    ...(pull?.holes.map(hole => `pull ${size(hole.fromLeft)}, ${size(hole.fromBottom)}`) ?? []),
    `diagonal ${decimal(units, door.diagonal.length)}`,
    `mass ${door.mass.toFixed(3)} kg`,
  ];
}

const partLines = (part: Part, size: (length: Length) => string): readonly string[] => [
  `${part.code.slice(part.code.lastIndexOf('-') + 1)} ${size(part.length.value)} x ${size(part.width.value)} x ${size(part.thickness)}`,
  ...makeLines(part.make, size),
];

function makeLines(make: Make, size: (length: Length) => string): readonly string[] {
  if (make.kind !== 'plywood-panel' && make.kind !== 'solid-panel') return [];
  const { rabbet } = make;
  const cut =
    rabbet === undefined
      ? []
      : [`  rabbet ${size(rabbet.depth)} deep ${size(rabbet.width)} wide tongue ${size(rabbet.tongue)}`];
  if (make.kind === 'plywood-panel') return cut;
  const { movement, glueUp } = make;
  return [
    ...cut,
    `  swells ${decimal('inch', movement.swells)} shrinks ${decimal('inch', movement.shrinks)}`,
    `  wettest ${decimal('inch', movement.clearance)} free driest ${decimal('inch', movement.engagement)} held`,
    `  ${glueUp.strips} strips of ${size(glueUp.stripWidth)} for ${size(glueUp.blankLength)} x ${size(glueUp.blankWidth)}`,
  ];
}

/** Fractions to 1/64 where they are exact, else decimals: 0.224. Millimetres as they are. */
const exactly =
  (units: In) =>
  (length: Length): string => {
    if (units === 'mm') return `${length / 1e6}`;
    if (length % 396_875 !== 0) return decimal('inch', length);
    const sixtyFourths = length / 396_875;
    const whole = Math.floor(sixtyFourths / 64);
    let [over, under] = [sixtyFourths % 64, 64];
    while (over !== 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
    return over === 0 ? `${whole}` : `${whole === 0 ? '' : `${whole} `}${over}/${under}`;
  };

const decimal = (units: In, length: Length): string =>
  `${Math.round((length / (units === 'mm' ? 1e6 : 25_400_000)) * 10_000) / 10_000}`;
