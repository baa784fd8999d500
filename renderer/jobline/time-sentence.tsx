import { sayMinutes, sayPrice } from '../../core/say-time';
import { shopValues } from '../../core/shop-values';
import { cutTimes } from '../../core/wire/cut-times';
import { PanelValue } from '../controls/panel-value';
import { TimesPanel } from '../panels/times-panel';
import { sayWireLength } from '../panels/say-wire-length';
import { useAppState } from '../state/use-app';

/** What cutting everything takes: time, wire and, where an hour has a price, money. */
export function TimeSentence() {
  const made = useAppState((state) => state.made);
  const unit = useAppState((state) => state.unit);
  if (!made) return null;
  const times = cutTimes(made.plan, shopValues(made.job));
  const { minutes, wire, price } = times.set;
  const { hourlyPrice } = made.job.technology.machine;
  const cost = hourlyPrice && price !== null ? `, ${sayPrice(price, hourlyPrice)}` : '';
  return (
    <>
      Cutting takes{' '}
      <span className="glued">
        <PanelValue
          label="Cutting time and cost"
          text={`${sayMinutes(minutes)}, ${sayWireLength(wire, unit)} of wire${cost}`}
          title="Cutting time and cost"
        >
          <TimesPanel times={times} />
        </PanelValue>
        .
      </span>
    </>
  );
}
