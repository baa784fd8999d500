import type { Job } from '../job';
import type { Plan } from '../plan';
import { sayMinutes, sayPrice, sayWire } from '../say-time';
import { cutTimes, type CutTime } from '../wire/cut-times';
import { shopValues } from '../shop-values';

export interface TimeRow {
  /** A member's id, or "set". */
  readonly label: string;
  readonly text: string;
}

/** Machine time, wire and price in words, of every member and last of the set. */
export function timeRows(plan: Plan, job: Job): readonly TimeRow[] {
  const { members, set } = cutTimes(plan, shopValues(job));
  return [
    ...members.map((member) => ({ label: member.memberId, text: sayCutTime(member, job) })),
    { label: 'set', text: sayCutTime(set, job) },
  ];
}

/** "1 h 23 min, 664 m (2178 ft) of wire, 83.00 EUR". */
export function sayCutTime({ minutes, wire, price }: CutTime, job: Job): string {
  const { hourlyPrice } = job.technology.machine;
  const cost = hourlyPrice && price !== null ? `, ${sayPrice(price, hourlyPrice)}` : '';
  return `${sayMinutes(minutes)}, ${sayWire(wire)} of wire${cost}`;
}
