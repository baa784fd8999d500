import { done, failed, type Result } from '../../core/problem';
import type { Machine } from '../../core/technology';
import { ValueInput } from '../controls/value-input';

export interface HourlyPriceProps {
  readonly machine: Machine;
  readonly onCommit: (price: Machine['hourlyPrice']) => void;
}

/** "90 EUR", in any currency; empty where no price is to be worked out. */
export function HourlyPrice({ machine: { hourlyPrice }, onCommit }: HourlyPriceProps) {
  return (
    <ValueInput
      label="Price of an hour"
      text={hourlyPrice ? `${hourlyPrice.amount} ${hourlyPrice.currency}`.trim() : 'not said'}
      read={readPrice}
      onCommit={onCommit}
    />
  );
}

function readPrice(text: string): Result<Machine['hourlyPrice']> {
  const bare = text.trim();
  if (bare === '' || bare === 'not said') return done(null);
  const [, before = '', number = '', after = ''] = /^(\D{0,8}?)\s*([\d.,]+)\s*(\D{0,8})$/.exec(bare) ?? [];
  const amount = Number(number.replace(',', '.'));
  if (number === '' || !Number.isFinite(amount)) {
    return failed(
      'price-not-read',
      `"${bare}" is no price`,
      '',
      'Type an amount and a currency, such as 90 EUR.',
    );
  }
  return done({ amount, currency: (after.trim() || before.trim()).slice(0, 8) });
}
