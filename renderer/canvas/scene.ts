import { segmentBox, segmentLength } from '../../core/geometry/contour-measures';
import type { Box, Chain, Vertex } from '../../core/geometry/contour';
import type { Cut, Member, Plan } from '../../core/plan';
import { buildDieSet, type DieSetScene } from './die-set-scene';
import { chainChunks, contourChunks, regionChunk, type PathChunk } from './path-chunk';
import { membersOf } from '../../core/wire/members-of';

/** A plan made ready to be drawn at any zoom. */
export interface Scene {
  readonly plan: Plan;
  readonly members: readonly MemberPicture[];
  readonly dieSet: DieSetScene;
}

export interface MemberPicture {
  readonly member: Member;
  readonly designed: readonly PathChunk[];
  readonly asCut: readonly PathChunk[];
  /** The opening at the exit face, and the wire's upper end meanwhile; nothing where the wire stands upright. */
  readonly exit: readonly PathChunk[];
  readonly upper: readonly PathChunk[];
  readonly body: PathChunk | null;
  readonly remainders: readonly (PathChunk & { readonly findingKey: string })[];
  readonly passes: readonly PassPicture[];
  readonly tabs: readonly PathChunk[];
  readonly cuts: readonly Cut[];
}

export interface PassPicture {
  readonly pass: number;
  readonly leads: readonly PathChunk[];
  readonly main: readonly PathChunk[];
  /** For the arrowheads: segments with the length run before each. */
  readonly run: readonly RunSegment[];
}

export interface RunSegment {
  readonly from: Vertex;
  readonly to: Vertex;
  readonly box: Box;
  readonly before: number;
  readonly length: number;
}

export function buildScene(plan: Plan): Scene {
  return {
    plan,
    dieSet: buildDieSet(plan.dieSet),
    members: membersOf(plan).map(memberPicture),
  };
}

/** The same with the members of one block only; all of them where there is no such block. */
export function sceneOfBlock(scene: Scene, blockId: string | null): Scene {
  const block = scene.plan.blocks.find(({ id }) => id === blockId);
  if (!block) return scene;
  return { ...scene, members: scene.members.filter(({ member }) => block.memberIds.includes(member.id)) };
}

function memberPicture(member: Member): MemberPicture {
  return {
    member,
    designed: contourChunks(member.designed),
    asCut: contourChunks(member.asCut),
    exit: contourChunks(member.relief?.planes.at(-1)?.wall ?? []),
    upper: chainChunks(
      member.cuts
        .flatMap(({ passes }) => passes.slice(-1))
        .flatMap(({ main, tabs }) => [...main, ...tabs])
        .flatMap(({ upper }) => (upper ? [upper.cut] : [])),
    ),
    body: regionChunk(member.asCut),
    remainders: member.remainders.flatMap(({ findingKey, outline }) => {
      const chunk = regionChunk([outline]);
      return chunk ? [{ ...chunk, findingKey }] : [];
    }),
    passes: member.cuts.flatMap((cut) => cut.passes.map((path) => passPicture(path))),
    tabs: chainChunks(
      member.cuts.flatMap(({ passes }) =>
        passes.slice(0, 1).flatMap(({ tabs }) => tabs.map((tab) => tab.cut)),
      ),
    ),
    cuts: member.cuts,
  };
}

function passPicture(path: Cut['passes'][number]): PassPicture {
  return {
    pass: path.pass,
    leads: chainChunks([...path.main, ...path.tabs].flatMap(({ leadIn, leadOut }) => [leadIn, leadOut])),
    main: chainChunks([...path.main, ...path.tabs].map(({ cut }) => cut)),
    run: runOf(path.main[0]?.cut ?? []),
  };
}

function runOf(chain: Chain): RunSegment[] {
  const run: RunSegment[] = [];
  let before = 0;
  for (let i = 0; i + 1 < chain.length; i++) {
    const from = chain[i] as Vertex;
    const to = chain[i + 1] as Vertex;
    const length = segmentLength(from, to);
    run.push({ from, to, before, length, box: segmentBox(from, to) });
    before += length;
  }
  return run;
}
