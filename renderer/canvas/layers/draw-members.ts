import { picturePartOf } from '../../picture/picture-part-of';
import type { PicturePart } from '../../state/app-state';
import type { Target } from '../../state/target';
import { boxesMeet, inDrawingSpace, type View } from '../drawing-space';
import { strokeChunks } from '../path-chunk';
import type { MemberPicture, Scene } from '../scene';

/** Punches and dies: the body of the punch tinted, the as-cut edge thin, the designed contour over it. */
export function drawMembers(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  isShown: (part: PicturePart) => boolean,
): void {
  for (const picture of scene.members) {
    if (!isShown(picturePartOf(picture.member))) continue;
    if (picture.member.role === 'punch') tintBody(context, picture, view);
    const color = colorOf(picture, view);
    context.globalAlpha = 0.55;
    strokeChunks(context, view, picture.asCut, { color, width: 1 });
    context.globalAlpha = 1;
    strokeChunks(context, view, picture.designed, memberStroke(picture, color, 1.75));
  }
}

/** One member picked out or pointed at. */
export function drawMemberHighlight(
  context: CanvasRenderingContext2D,
  scene: Scene,
  view: View,
  target: Target | null,
): void {
  if (target?.kind !== 'member') return;
  const picture = scene.members.find(({ member }) => member.id === target.id);
  if (!picture) return;
  context.globalAlpha = 0.25;
  strokeChunks(context, view, picture.designed, { color: view.palette.focus, width: 9 });
  context.globalAlpha = 1;
  strokeChunks(context, view, picture.designed, memberStroke(picture, colorOf(picture, view), 2.5));
}

/** Plates in the soft ink, so that die and punch stand out. */
const colorOf = ({ member }: MemberPicture, { palette }: View): string =>
  picturePartOf(member) === 'plates' ? palette.inkSoft : palette[member.role];

/** The line style says the same as the colour: die solid, punch dashed, plates finer. */
const memberStroke = ({ member }: MemberPicture, color: string, width: number) =>
  picturePartOf(member) === 'plates'
    ? { color, width: width / 2, dash: [2, 3] }
    : member.role === 'punch'
      ? { color, width, dash: [8, 5] }
      : { color, width };

function tintBody(context: CanvasRenderingContext2D, { body, member }: MemberPicture, view: View): void {
  if (!body || !boxesMeet(body.box, view.visible)) return;
  inDrawingSpace(context, view, body.origin, () => {
    context.globalAlpha = 0.07;
    context.fillStyle = view.palette[member.role];
    context.fill(body.path);
  });
}
