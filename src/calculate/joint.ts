import type { FrameStyle } from '../import/job.ts';
import { nm } from '../units/length.ts';
import type { Joint, LengthWorking, Make, Rabbet } from './door-set.ts';
import type { Piece } from './piece.ts';
import { backProjection } from './rabbet.ts';
import { sumOf, workShared } from './working.ts';

/** The section through stile and infill, and how those of its numbers came about that no part has. */
export type JointWorking = { readonly joint: Joint; readonly workings: readonly LengthWorking[] };

/** The section of a frame that `infill` fills, cut for a clear opening as wide as `sight`. */
export function jointOf(style: FrameStyle, infill: Piece, sight: LengthWorking): JointWorking {
  const projection = backProjection(style);
  const edgeAllowance = workShared(
    EDGE_ALLOWANCE,
    { by: 2, to: nm(1) },
    { w: sight.value, D: style.grooveDepth, B: infill.width.value },
  );
  const joint: Joint = {
    frameThickness: style.frameThickness,
    grooveDepth: style.grooveDepth,
    grooveWidth: style.grooveWidth,
    faceToGroove: style.faceToGroove,
    tongueLength: style.tongueLength,
    stileWidth: style.stileWidth,
    infillKind: style.infill.kind,
    infillThickness: infill.thickness,
    rabbet: rabbetOf(infill.make),
    backProjection: projection.value,
    edgeAllowance: edgeAllowance.value,
  };
  return { joint, workings: [projection, edgeAllowance] };
}

const EDGE_ALLOWANCE = sumOf('edge-allowance', [1, 'w'], [2, 'D'], [-1, 'B']);

const rabbetOf = (make: Make): Rabbet | undefined =>
  make.kind === 'plywood-panel' || make.kind === 'solid-panel' ? make.rabbet : undefined;
