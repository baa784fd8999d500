import type { ReactNode } from 'react';
import { materialFamilies, type MaterialFamily } from '../../core/die/edge-types';
import type { OwnMaterial } from '../../core/die/own-material';
import { done, failed, type Result } from '../../core/problem';
import { Choice } from '../controls/choice';
import { ShareInput } from '../controls/number-input';
import { QuantityInput } from '../controls/quantity-input';
import { ValueInput } from '../controls/value-input';

export interface OwnMaterialRowProps {
  readonly material: OwnMaterial;
  readonly isUsed: boolean;
  readonly onChange: (material: OwnMaterial, turning: boolean) => void;
  /** Buttons at the end of the row. */
  readonly children: ReactNode;
}

/** One of the user's materials, every cell editable. */
export function OwnMaterialRow({ material, isUsed, onChange, children }: OwnMaterialRowProps) {
  const { name, family, clearance, shearStrength, tensileStrength, source } = material;
  const set = (part: Partial<OwnMaterial>, turning = false) => onChange({ ...material, ...part }, turning);
  return (
    <tr aria-current={isUsed}>
      <th scope="row">
        <ValueInput
          label={`Name of ${name}`}
          text={name}
          read={readName}
          onCommit={(text) => set({ name: text })}
        />
        <span className="fact-source">
          <ValueInput
            label={`Source of ${name}`}
            text={source === '' ? 'where the numbers come from' : source}
            read={(text) => done(text.trim())}
            onCommit={(text) => set({ source: text })}
          />
        </span>
      </th>
      <td>
        <Choice<MaterialFamily | 'other'>
          label={`Kind of ${name}`}
          value={family ?? 'other'}
          options={[
            { value: 'other', name: 'other' },
            ...materialFamilies.map((value) => ({ value, name: value })),
          ]}
          onChoose={(kind) => set({ family: kind === 'other' ? null : kind })}
        />
      </td>
      <td>
        <ShareInput
          label={`Clearance of ${name}`}
          value={clearance}
          onCommit={(value, turning) =>
            set({ clearance: Math.min(1, Math.max(leastClearance, value)) }, turning)
          }
        />
      </td>
      <td>
        <QuantityInput
          label={`Shear strength of ${name}`}
          quantity="stress"
          value={shearStrength}
          onCommit={(value, turning) => set({ shearStrength: value }, turning)}
        />
      </td>
      <td>
        <QuantityInput
          label={`Tensile strength of ${name}`}
          quantity="stress"
          value={tensileStrength}
          onCommit={(value, turning) => set({ tensileStrength: value }, turning)}
        />
      </td>
      <td className="row-buttons">{children}</td>
    </tr>
  );
}

/** A tenth of a percent of the thickness: no clearance at all is no clearance. */
const leastClearance = 0.001;

const readName = (text: string): Result<string> =>
  text.trim() === ''
    ? failed('name-empty', 'A material needs a name', '', 'Type what is on its certificate.')
    : done(text.trim());
