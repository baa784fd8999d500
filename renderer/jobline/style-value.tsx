import type { ProgramStyle } from '../../core/program-style';
import { shippedStyles } from '../../core/shipped-styles';
import { Choice } from '../controls/choice';
import { setOutput } from '../state/edits/set-output';
import { editJob } from '../state/job-edit';
import { openOwnFile, saveStyle } from '../state/own-files';
import { useApp } from '../state/use-app';

/** The style that programs are written in: one that comes with the program, or the shop's from a file. */
export function StyleValue({ style }: { style: ProgramStyle }) {
  const app = useApp();
  const shipped = Object.values(shippedStyles);
  const known = shipped.some(({ name }) => name === style.name) ? shipped : [...shipped, style];
  return (
    <Choice
      label="Program style"
      value={`style ${style.name}`}
      text={style.name}
      options={[
        ...known.map(({ name, unitWords, arcs }) => ({
          value: `style ${name}`,
          name,
          aside: `${unitWords}, arcs by ${arcs === 'centre' ? 'I and J' : 'R'}`,
        })),
        { value: 'open', name: 'Open a style file…' },
        { value: 'save', name: 'Save this style as a file…', aside: 'with a comment beside every value' },
      ]}
      onChoose={(chosen) => {
        if (chosen === 'open') void openOwnFile(app, 'style');
        else if (chosen === 'save') void saveStyle(app);
        else {
          const next = known.find(({ name }) => chosen === `style ${name}`);
          if (next) editJob(app, setOutput, { style: next });
        }
      }}
    />
  );
}
