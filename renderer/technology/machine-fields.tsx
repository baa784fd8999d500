import { done, failed, type Result } from '../../core/problem';
import type { Machine, Technology } from '../../core/technology';
import { LengthInput } from '../controls/length-input';
import { ValueInput } from '../controls/value-input';
import { setTechnology } from '../state/edits/set-technology';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';
import { HourlyPrice } from './hourly-price';

/** Limits of the machine, and what an hour of it costs. */
export function MachineFields({ technology }: { technology: Technology }) {
  const app = useApp();
  const { machine } = technology;
  const change = (part: Partial<Machine>, say: string) =>
    editJob(app, setTechnology, { technology: { ...technology, machine: { ...machine, ...part } }, say });
  return (
    <fieldset className="machine">
      <legend>Machine</legend>
      <label>
        Highest block
        <LengthInput
          label="Highest block"
          value={machine.largestHeight}
          onCommit={(largestHeight) => change({ largestHeight }, 'Highest block of the machine')}
        />
      </label>
      <label>
        Largest angle of the wire
        <ValueInput
          label="Largest angle of the wire"
          text={`${machine.largestTaperDeg}°`}
          read={(text) => readNumber(text, 'angle', '°', 60)}
          onCommit={(largestTaperDeg) => change({ largestTaperDeg }, 'Largest angle of the wire')}
        />
      </label>
      <label>
        Upper guide above the block
        <LengthInput
          label="Upper guide above the block"
          value={machine.upperGuideAbove}
          mayBeZero
          onCommit={(upperGuideAbove) => change({ upperGuideAbove }, 'Upper guide')}
        />
      </label>
      <label>
        Lower guide below the block
        <LengthInput
          label="Lower guide below the block"
          value={machine.lowerGuideBelow}
          mayBeZero
          onCommit={(lowerGuideBelow) => change({ lowerGuideBelow }, 'Lower guide')}
        />
      </label>
      <label>
        From one threading to the next
        <ValueInput
          label="From one threading to the next"
          text={`${machine.threadingMinutes} min`}
          read={(text) => readNumber(text, 'time', 'min', 600)}
          onCommit={(threadingMinutes) => change({ threadingMinutes }, 'Time for threading')}
        />
      </label>
      <label>
        Price of an hour
        <HourlyPrice
          machine={machine}
          onCommit={(hourlyPrice) => change({ hourlyPrice }, 'Price of an hour')}
        />
      </label>
    </fieldset>
  );
}

function readNumber(text: string, noun: string, unit: string, most: number): Result<number> {
  const value = Number(text.replace(unit, '').trim().replace(',', '.'));
  if (text.trim() !== '' && value >= 0 && value <= most) return done(value);
  return failed('number-not-read', `"${text.trim()}" is no ${noun}`, '', `Type a number from 0 to ${most}.`);
}
