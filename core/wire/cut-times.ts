import { chainLength } from '../geometry/contour-measures';
import type { CutRun, PartName, Plan } from '../plan';
import type { Machine, TechnologyPass } from '../technology';
import { membersOf } from './members-of';
import { blockWork, type WorkStep } from './block-work';
import * as portable from '../geometry/portable-math';

/** What one pass over a member takes. */
export interface PassTime {
  /** 0 the rough cut. */
  readonly pass: number;
  /** Along the contour, and to it and back, mm; of a leaning wire halfway up. */
  readonly cutLength: number;
  readonly leadLength: number;
  /** Both lengths times the height that is cut, mm². */
  readonly area: number;
  readonly minutes: number;
  /** Wire that runs off the spool meanwhile, m. */
  readonly wire: number;
}

/** What is cut, or the sum of several. */
export interface CutTime {
  readonly minutes: number;
  /** m. */
  readonly wire: number;
  /** In the currency of the hourly price; null where there is none. */
  readonly price: number | null;
}

export interface MemberTime extends CutTime {
  readonly memberId: string;
  readonly passes: readonly PassTime[];
  readonly threadings: number;
}

export interface CutTimes {
  readonly members: readonly MemberTime[];
  readonly set: CutTime;
}

export interface ShopValues {
  readonly passes: Readonly<Record<PartName, readonly Pick<TechnologyPass, 'wireSpeed'>[]>>;
  /** Heights of the blocks, mm. */
  readonly heights: Readonly<Record<PartName, number>>;
  readonly machine: Pick<Machine, 'threadingMinutes' | 'hourlyPrice'>;
}

/**
 * Machine time, wire and price of every member and of the whole set: each pass takes its length over its feed, which
 * is the cut area over the rate, and each threading its minutes. A leaning wire's feed counts halfway up, so that the
 * cut surface is what it is; a relief goes at the rough cut's feed, though less height is cut. Setting up, measuring and standing still at a stop
 * are not in it.
 */
export function cutTimes(plan: Pick<Plan, 'pairs' | 'blocks'>, shop: ShopValues): CutTimes {
  const work = plan.blocks.flatMap((block) => blockWork(plan, block));
  const members = membersOf(plan).map(({ id, part }) =>
    memberTime(
      id,
      part,
      work.filter((step) => step.member.id === id),
      shop,
    ),
  );
  const minutes = sum(members.map((member) => member.minutes));
  return {
    members,
    set: { minutes, wire: sum(members.map(({ wire }) => wire)), price: priceOf(minutes, shop) },
  };
}

function memberTime(
  memberId: string,
  part: PartName,
  work: readonly WorkStep[],
  shop: ShopValues,
): MemberTime {
  const runs = work.flatMap((step) => step.runs);
  const numbers = [...new Set(runs.map(({ pass }) => pass.pass))].sort((a, b) => a - b);
  const passes = numbers.map((pass) =>
    passTime(
      pass,
      runs.filter((run) => run.pass.pass === pass),
      heightOf(work, pass, shop.heights[part]),
      // A relief comes after the passes, and is cut like the rough one.
      (shop.passes[part][pass] ?? shop.passes[part][0])?.wireSpeed ?? 0,
    ),
  );
  const minutes = sum(passes.map((pass) => pass.minutes)) + work.length * shop.machine.threadingMinutes;
  return {
    memberId,
    passes,
    threadings: work.length,
    minutes,
    wire: sum(passes.map(({ wire }) => wire)),
    price: priceOf(minutes, shop),
  };
}

function passTime(pass: number, runs: WorkStep['runs'], height: number, wireSpeed: number): PassTime {
  const of = (part: 'leadIn' | 'cut' | 'leadOut') => sum(runs.map(({ path }) => halfwayUp(path, part)));
  const [cutLength, leadLength] = [of('cut'), of('leadIn') + of('leadOut')];
  const length = cutLength + leadLength;
  const feed = runs[0]?.pass.feed ?? Infinity;
  const minutes = length / feed;
  return { pass, cutLength, leadLength, area: length * height, minutes, wire: minutes * wireSpeed };
}

/** Of a part of a run, mm: straights are parallel and arcs concentric, so that halfway up is the mean. */
const halfwayUp = (path: CutRun, part: 'leadIn' | 'cut' | 'leadOut'): number =>
  (chainLength(path[part]) + chainLength(path.upper?.[part] ?? path[part])) / 2;

/** How high the surface is that a pass cuts, along the wire, mm. */
function heightOf(work: readonly WorkStep[], pass: number, block: number): number {
  const [step] = work;
  const relief = step?.member.relief;
  const lean = step?.cut.passes.find((one) => one.pass === pass)?.lean;
  if (!relief || !lean) return block;
  return (block - (lean === 'relief' ? relief.land : 0)) / portable.cos(relief.angle);
}

const priceOf = (minutes: number, { machine: { hourlyPrice } }: ShopValues): number | null =>
  hourlyPrice === null ? null : (minutes / 60) * hourlyPrice.amount;

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
