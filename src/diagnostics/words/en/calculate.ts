import { pounds } from '../../../units/mass.ts';
import type { CalculateProblems, FrameSide, GroovedMember } from '../../problems/calculate.ts';
import type { Words } from '../../words.ts';

export const calculate: Words<CalculateProblems> = {
  'door-has-no-size': ({ door, width, height }, size) => ({
    what: `The door of ${door} comes out ${size(width)} wide and ${size(height)} high.`,
    mend: 'Make the opening larger, or the clearances and the pair gap smaller.',
  }),
  'rail-has-no-length': ({ door, shoulder }, size) => ({
    what: `${door} is too narrow for its stiles: ${size(shoulder)} is left between them.`,
    mend: 'Make the opening wider or the stiles narrower.',
  }),
  'sight-has-no-width': ({ door, width }, size) => ({
    what: `${door} is too narrow for its middle stiles: each panel would show ${size(width)}.`,
    mend: 'Make the opening wider, the stiles narrower, or Panels wide smaller.',
  }),
  'sight-has-no-height': ({ door, row, height }, size) => ({
    what: `Between the rails of ${door}, panel ${row} from the bottom would show ${size(height)}.`,
    mend: 'Make the opening higher, the rails narrower, or set Middle rail heights farther apart, from the bottom up.',
  }),
  'panel-leaves-groove': ({ door, width, shrinks, swells, gap }, size) => ({
    what: `The solid panel of ${door}, ${size(width)} wide, swells ${size(swells)} and shrinks ${size(shrinks)}: in the driest weeks it stands ${size(gap)} out of its groove on each edge.`,
    mend: 'Use a deeper groove, quarter-sawn stock, two panels side by side, or plywood.',
  }),
  'panel-barely-held': ({ door, width, shrinks, swells, engagement, least }, size) => ({
    what: `The solid panel of ${door}, ${size(width)} wide, swells ${size(swells)} and shrinks ${size(shrinks)}: in the driest weeks ${size(engagement)} of it is left in the groove on each edge, less than ${size(least)}.`,
    mend: 'Use a deeper groove, quarter-sawn stock, or two panels side by side.',
  }),
  'door-wants-middle-rail': ({ door, height, from }, size) => ({
    what: `The door of ${door} is ${size(height)} high and has no middle rail; above ${size(from)} a frame wants one.`,
    mend: 'Write 2 or more in Panels high.',
  }),
  'door-beyond-hinge-table': ({ door, height, mass }, size) => ({
    what: `The door of ${door}, ${size(height)} high and ${mass.toFixed(1)} kg (${pounds(mass).toFixed(1)} lb), is beyond the table of hinges; it gets the most of the table.`,
    mend: 'Ask the maker of the hinge, and put the numbers in the table.',
  }),
  'door-too-short-for-hinges': ({ door, height, hinges }, size) => ({
    what: `The door of ${door} is ${size(height)} high: the plates of its ${hinges} hinges overlap.`,
    mend: 'Make the door higher, or hang it another way.',
  }),
  'hinges-closer-than-width': ({ door, apart, width }, size) => ({
    what: `The end hinges of ${door} are ${size(apart)} apart, and the door is ${size(width)} wide: it may sag.`,
    mend: 'Make it a pair, or set the hinges nearer to the ends.',
  }),
  'hinge-on-rail-joint': ({ door, fromTop, shiftMax }, size) => ({
    what: `The hinge of ${door} at ${size(fromTop)} from the top lies on the joint of a middle rail, and no place within ${size(shiftMax)} is clear.`,
    mend: 'Move the middle rail, or allow the hinge a larger shift.',
  }),
  'pull-off-the-door': ({ door, fromLeft, fromBottom }, size) => ({
    what: `A hole of the pull of ${door}, ${size(fromLeft)} from the left and ${size(fromBottom)} from the bottom, is not on the door.`,
    mend: 'Use a smaller pull, or change its distances in Shop.',
  }),
  'pull-in-groove': ({ door, fromEdge, solid }, size) => ({
    what: `The pull of ${door}, ${size(fromEdge)} from the edge, is bored into the groove: the stile is solid for ${size(solid)} only.`,
    mend: 'Set the pull nearer to the edge.',
  }),
  'overlay-wider-than-frame': ({ door, side, overlay, member }, size) => ({
    what: `The door of ${door} lies ${size(overlay)} over the face frame ${SIDES[side]}, and the member there is ${size(member)} wide.`,
    mend: 'Make the overlay smaller, or correct the width of the face frame.',
  }),
  'reveal-too-small': ({ door, neighbour, side, member, overlays, left, reveal }, size) => ({
    what: `${door} and ${neighbour} share a face-frame member of ${size(member)} (${SIDES[side]} of ${door}); their overlays take ${size(overlays)} of it, which leaves ${size(left)} where ${size(reveal)} should show.`,
    mend: 'Make one of the two overlays smaller.',
  }),
  'neighbour-ambiguous': ({ door, neighbour }) => ({
    what: `${door} names ${neighbour} as its neighbour, which has several openings; the reveal between them was not checked.`,
    mend: `Write which one, as ${neighbour}/A.`,
  }),
  'groove-deeper-than-member': ({ style, member, width, grooves }, size) => ({
    what: `The ${MEMBERS[member]} of style ${style} is ${size(width)} wide, and grooves take ${size(grooves)} of it.`,
    mend: 'Make the member wider or the groove shallower.',
  }),
  'member-between-marks': ({ style, member, width }, size) => ({
    what: `The ${MEMBERS[member]} of style ${style} lies between two marks of the tape and is printed as ${size(width)}; sums of printed sizes can be off by as much, and the working says by how much.`,
    mend: 'Give its width on the marks, or print lengths in millimetres (Shop).',
  }),
  'groove-breaks-back': ({ style, reaches, frameThickness }, size) => ({
    what: `The groove of style ${style} reaches ${size(reaches)} behind the show face, and the frame is ${size(frameThickness)} thick: no lip is left at the back.`,
    mend: 'Use thicker stock, a narrower groove, or set the groove nearer to the face.',
  }),
  'tongue-longer-than-groove': ({ style, tongue, groove }, size) => ({
    what: `The tongues of style ${style} are ${size(tongue)} long and bottom in grooves of ${size(groove)}: the shoulders would stay open.`,
    mend: 'Make the tongue as long as the groove is deep, or a little shorter.',
  }),
  'panel-not-in-groove': ({ style, groove, allowance }, size) => ({
    what: `The groove of style ${style} is ${size(groove)} deep, and the panel is cut ${size(allowance)} short of it on each edge: nothing holds it.`,
    mend: 'Make the groove deeper or the allowance smaller.',
  }),
  'panel-tongue-too-thin': ({ style, groove, fit }, size) => ({
    what: `The panel of style ${style} wants a tongue for a groove of ${size(groove)}, and the fit takes ${size(fit)}.`,
    mend: 'Make the groove wider or the fit smaller.',
  }),
  'panel-loose-in-groove': ({ style, panel, groove }, size) => ({
    what: `The panel of style ${style} is ${size(panel)} thick in a groove of ${size(groove)}: it will rattle.`,
    mend: 'Use a narrower groove or a thicker panel; a panel that is thicker than the groove is rabbeted to fit.',
  }),
  'panel-proud-of-back': ({ style, proud }, size) => ({
    what: `The panel of style ${style} stands ${size(proud)} proud of the frame's back: the door rocks on the bench, fouls a boring jig, and the hinges' plates must clear it.`,
    mend: 'Use a thinner panel, a thicker frame, or set the groove nearer to the face.',
  }),
  'glass-without-stop': ({ style, left }, size) => ({
    what: `Behind the glass of style ${style} ${size(left)} is left for a stop.`,
    mend: 'Use thinner glass, a thicker frame, or set the groove nearer to the face.',
  }),
  'stock-too-thin': ({ style, stock, has, wants }, size) => ({
    what: `Style ${style} wants parts ${size(wants)} thick from ${stock}, which is ${size(has)} thick.`,
    mend: 'Choose thicker stock, or correct the thickness.',
  }),
  'sheet-thickness-differs': ({ style, stock, has, wants }, size) => ({
    what: `Style ${style} reckons with a sheet ${size(wants)} thick, and ${stock} is ${size(has)}; the rabbet is cut for the first.`,
    mend: 'Measure the sheet, and write the same thickness in Styles and Stock.',
  }),
  'cup-breaks-into-groove': ({ style, wants, has }, size) => ({
    what: `A hinge cup wants ${size(wants)} of the stile of style ${style}, and ${size(has)} is solid beside the groove: the cup would break into it.`,
    mend: 'Use wider stiles, a shallower groove, or set the cup nearer to the edge.',
  }),
  'cup-breaks-through': ({ style, left, least }, size) => ({
    what: `Under a hinge cup ${size(left)} of wood is left in style ${style}, and ${size(least)} should be.`,
    mend: 'Use thicker stock or a hinge with a shallower cup.',
  }),
  'movement-unknown': ({ style, stock, species, known }) => ({
    what: `The solid panels of style ${style} are of ${stock}, and how "${species}" moves with the seasons is not in the tables.`,
    mend: `Write in Stock the one of these that moves most like it: ${known}.`,
  }),
  'moisture-beyond-table': ({ style, moisture }) => ({
    what: `The wood of style ${style} reaches ${moisture.toFixed(1)} % moisture; the coefficients of movement are published for 6 to 14 %, so its movement is an estimate.`,
    mend: 'Nothing need be done; be generous with the groove.',
  }),
  'species-unknown': ({ stock, species, density }) => ({
    what: `${stock} is of "${species}", which is not in the tables; its doors are weighed with ${density} kg/m³.`,
    mend: 'Write its density in Stock.',
  }),
  'barcode-clash': ({ one, other }) => ({
    what: `${one} and ${other} would carry the same barcode. It happens in fewer than one job in ten thousand.`,
    mend: 'Change the label of one of the two openings a little.',
  }),
};

const SIDES: { readonly [S in FrameSide]: string } = {
  left: 'on the left',
  right: 'on the right',
  top: 'at the top',
  bottom: 'at the bottom',
};

const MEMBERS: { readonly [M in GroovedMember]: string } = {
  stile: 'stile',
  'rail-top': 'top rail',
  'rail-bottom': 'bottom rail',
  'rail-middle': 'middle rail',
  'stile-middle': 'middle stile',
};
