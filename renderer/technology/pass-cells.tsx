import type { TechnologyPass } from '../../core/technology';
import { roughnessClass } from '../../core/wire/roughness-class';
import { LengthInput } from '../controls/length-input';
import { QuantityInput } from '../controls/quantity-input';

export interface PassCellsProps {
  readonly pass: TechnologyPass;
  /** The last pass leaves no stock: its cell is no field. */
  readonly isLast: boolean;
  /** Ends the names of the fields, e.g. "rough cut". */
  readonly of: string;
  readonly onChange: (change: Partial<TechnologyPass>, turning: boolean) => void;
}

/** The cells of one pass: gap, stock left, rate, Ra with its class, wire speed. */
export function PassCells({ pass, isLast, of, onChange }: PassCellsProps) {
  const { sparkGap, stockLeft, rate, roughness, wireSpeed } = pass;
  return (
    <>
      <td>
        <LengthInput
          label={`Spark gap, ${of}`}
          value={sparkGap}
          mayBeZero
          onCommit={(value, turning) => onChange({ sparkGap: value }, turning)}
        />
      </td>
      <td>
        {isLast && stockLeft === 0 ? (
          'none'
        ) : (
          <LengthInput
            label={`Stock left, ${of}`}
            value={stockLeft}
            mayBeZero
            onCommit={(value, turning) => onChange({ stockLeft: value }, turning)}
          />
        )}
      </td>
      <td>
        <QuantityInput
          label={`Rate, ${of}`}
          quantity="rate"
          value={rate}
          onCommit={(value, turning) => onChange({ rate: value }, turning)}
        />
      </td>
      <td>
        <QuantityInput
          label={`Roughness Ra, ${of}`}
          quantity="roughness"
          value={roughness}
          onCommit={(value, turning) => onChange({ roughness: value }, turning)}
        />
      </td>
      <td>{roughness === null ? '–' : Math.round(roughnessClass(roughness))}</td>
      <td>
        <QuantityInput
          label={`Wire speed, ${of}`}
          quantity="wire speed"
          value={wireSpeed}
          onCommit={(value, turning) => onChange({ wireSpeed: value }, turning)}
        />
      </td>
    </>
  );
}

/** The headings of these cells. */
export function PassHeadings() {
  return (
    <>
      <th scope="col">Spark gap</th>
      <th scope="col">Stock left</th>
      <th scope="col">Rate</th>
      <th scope="col">Ra</th>
      <th scope="col">
        <abbr title="Class of the surface by VDI 3400">VDI 3400</abbr>
      </th>
      <th scope="col">Wire speed</th>
    </>
  );
}
