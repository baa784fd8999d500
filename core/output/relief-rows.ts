import { exitEnlargement } from '../die/regrinds';
import { tolerance } from '../geometry/tolerance';
import type { Plan, Relief } from '../plan';
import { sayAngle, sayLength } from '../say';

export interface ReliefRow {
  readonly label: string;
  readonly text: string;
}

/** The relief of a plan's dies in words and numbers, the worst of all openings; none where there is none. */
export function reliefRows({ pairs }: Plan): readonly ReliefRow[] {
  const reliefs = pairs.flatMap(({ die }) => die.relief ?? []);
  const [first] = reliefs;
  if (!first) return [];
  const { land, height, angle } = first;
  const leaning = reliefs.reduce((most, one) => Math.max(most, one.greatestLean), 0);
  return [
    {
      label: 'Relief',
      text:
        land > 0
          ? `${sayAngle(angle)} per side below a land of ${sayLength(land)}, a cut of its own, in a die of ${sayLength(height)}`
          : `${sayAngle(angle)} per side from the cutting edge, in every pass, in a die of ${sayLength(height)}`,
    },
    {
      label: 'Exit face',
      text: `${sayLength(exitEnlargement(height, { land, relief: angle }))} larger on each side; the wire leans up to ${sayAngle(leaning)}`,
    },
    { label: 'Surface', text: surfaceText(reliefs) },
  ];
}

/** "beside the wanted wall by at most … at 3 mm, … at 14 mm, … at 25 mm below the cutting edge; … allowed". */
function surfaceText(reliefs: readonly Relief[]): string {
  const depths = reliefs[0]?.planes.map(({ depth }) => depth) ?? [];
  const parts = depths.map((depth, k) => {
    const off = Math.max(...reliefs.map(({ planes }) => offOf(planes[k])));
    return `${sayLength(off)} at ${sayLength(depth)}`;
  });
  return `beside the wanted wall by at most ${parts.join(', ')} below the cutting edge; ${sayLength(tolerance.ruledSurface)} allowed`;
}

const offOf = (plane: Relief['planes'][number] | undefined): number =>
  plane ? Math.max(plane.gouge, plane.remainder) : 0;
