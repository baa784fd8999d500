import { asPlan, withProofs } from './assemble-plan';
import { programSheet, type ProgramSheet } from './block-program';
import { cornerChoiceFindings } from './check/corner-choice-findings';
import { blockSites } from './block-sites';
import { choicesOf, cutWishes } from './cut-wishes-of';
import { memberId } from './member-id';
import { verifyProgram, type ProgramVerdict } from './output/verify-program';
import { toleranceFindings } from './check/tolerance-findings';
import { dieSetFindings } from './check/die-set/die-set-findings';
import { dieSetChecks, dieSetQuery } from './die-set-query';
import { chooseClearance } from './die/choose-clearance';
import { dieRelief, reliefNotes } from './die-relief';
import { stripPlan } from './die/strip-plan';
import { cornerRulesFor } from './die/corner-rules';
import { followContours, type FollowedJob } from './follow-contours';
import { drawingStages, type SurveyedDrawing } from './drawing-stages';
import { writeJobFile } from './job-file';
import { byPart, heightOf, jobSchema, ownMaterialsOf, platesOf, type Job } from './job';
import { mateFits, shiftsWithFits } from './mate-fits';
import { nameOfPath } from './name-of-path';
import { outputFiles } from './output/output-files';
import type { OutputFile } from './output/output-file';
import { sealOf } from './output/seal-of';
import { writeProgram } from './output/write-program';
import { blanksOf, openingPart, pieceContours, placedContours } from './placed-contours';
import { createDieSetPlanner } from './plan-die-set';
import { planOneBlock } from './plan-one-block';
import { planPair, type PairPlan } from './plan-pair';
import { planPlate, withPlates } from './plan-plates';
import type { PartName, Plan } from './plan';
import { done, failed, type Result } from './problem';
import { createProver } from './prove-blocks';
import type { Progress } from './progress';
import { remember, rememberMany } from './remember';
import { sayIssue } from './say-issue';
import { sizedContour } from './sized-contour';
import { usedContours } from './used-contours';
import { wirePasses } from './wire-passes';
import { openSite } from './wire/site';

export interface Pipeline {
  /** What a person needs to see of the drawing to choose its unit, layers, colours and gap tolerance. */
  survey(job: Job, progress?: Progress): Result<SurveyedDrawing>;
  /** A job whose drawing is to be read otherwise than `before`, its choices for single contours still on the same ones. */
  followed(before: Job, job: Job): FollowedJob;
  plan(job: Job, progress?: Progress): Result<Plan>;
  /** The whole output of a job, the job file included. */
  files(job: Job): Result<readonly OutputFile[]>;
  /** Whether a program on disk still belongs to the job. */
  verify(job: Job, text: string): Result<ProgramVerdict>;
  /** One block's program, to be looked at and played. */
  program(job: Job, blockId: string): Result<ProgramSheet>;
}

/**
 * The stages from drawing to plan as functions that remember their last results: changing the wire computes anew from
 * the wire on, not the import. The same job always gives the same plan.
 */
export function createPipeline(): Pipeline {
  const stages = drawingStages();
  const sized = rememberMany(sizedContour, pairsRemembered);
  const ownCorners = rememberMany(cornerRulesFor, pairsRemembered);
  const uses = remember(usedContours);
  const blocks = remember(blockSites);
  const pair = rememberMany(planPair, pairsRemembered);
  const plate = rememberMany(planPlate, 2 * pairsRemembered);
  const mates = remember(mateFits);
  const oneBlockPair = rememberMany(planOneBlock, pairsRemembered);
  const prove = createProver();
  const pieces = rememberMany(pieceContours, 2);
  const strips = remember(stripPlan);
  const places = remember(placedContours);
  const planDieSet = createDieSetPlanner();

  const plan = (job: Job, progress: Progress = () => undefined): Result<Plan> => {
    const valid = checked(job);
    if (!valid.ok) return valid;
    const read = stages.drawing(job, (step, part) => progress(step, part * share.drawing));
    if (!read.ok) return read;
    const { drawing } = read.value;
    const clearance = chooseClearance(job.clearance, job.stock, ownMaterialsOf(job));
    if (!clearance.ok) return clearance;
    const technology = wirePasses(job);
    if (!technology.ok) return technology;
    const pairs: PairPlan[] = [];
    const { plugFit, plugFits } = job.dieSet;
    const fits = mates(drawing.contours, job.uses, plugFit, plugFits);
    if (!fits.ok) return fits;
    const shifts = shiftsWithFits(job.sizeShifts, fits.value);
    const drawn = uses(drawing.contours, job.uses, shifts, sized);
    const { arrangement, stationsApart, strip: stripChoice } = job.dieSet;
    const needsStrip = stripChoice.up !== 'none' || arrangement === 'two stations';
    const strip = needsStrip ? strips(pieces(drawn), job.stock.thickness, stripChoice) : null;
    const used = places(drawn, arrangement, strip?.step ?? null, stationsApart);
    const heights = byPart((part) => heightOf(job, part));
    const { oneBlock } = job.dieSet;
    // Out of one block punch and die stay what they are, whatever else the tool does with them.
    const cutAs = oneBlock ? 'simple' : arrangement;
    const plates = platesOf(job);
    const { groups, sites } = blocks(drawing, used, job.setup, job.lead, heights, cutAs, plates, oneBlock);
    const wishes = cutWishes(job);
    const blanks = blanksOf(used);
    for (const one of used) {
      const { contour, use } = one;
      const finished = (pairs.length + 0.5) / (used.length + 1);
      progress(`Cutting ${contour.id}`, share.drawing + finished * share.cut);
      const siteOf = (part: PartName) => sites.get(memberId(use, contour.id, part)) ?? openSite;
      const { part } = openingPart(one, blanks, cutAs);
      const gap = fits.value.get(contour.id)?.gap ?? clearance.value.choice.perSide;
      const choices = choicesOf(job.cuts, contour.id);
      const [rough] = technology.value.die;
      const asOne = oneBlock && use !== 'mate' && rough;
      const planned = asOne
        ? oneBlockPair(contour, use, {
            wireDiameter: job.wire.diameter,
            sparkGap: rough.sparkGap,
            feed: rough.feed,
            height: heights.die,
            clearance: gap,
            tabLength: job.lead.tabLength,
            chords: { tolerance: job.relief.chordTolerance, circular: job.relief.arcs === 'circular' },
            sizeShift: shifts[contour.id] ?? 0,
          })
        : pair(
            contour,
            use,
            gap,
            job.wire.diameter,
            { die: technology.value[part], punch: technology.value.punch },
            { rules: ownCorners(job.corners, contour.id), sizeShift: shifts[contour.id] ?? 0 },
            { die: wishes[part], punch: wishes.punch },
            { die: siteOf('die'), punch: siteOf('punch') },
            choices,
            use === 'mate' ? null : dieRelief(job, heights[part]),
            part,
          );
      const fitted = (use === 'mate' ? [] : plates).map((name) =>
        plate(planned.pair, gap, {
          plate: name,
          fit: job.dieSet[name].fit,
          corners: job.dieSet[name].corners,
          wireDiameter: job.wire.diameter,
          passes: technology.value[name],
          wishes: wishes[name],
          site: siteOf(name),
          choices,
        }),
      );
      pairs.push(withPlates(planned, fitted));
    }
    const ofTheJob = [
      ...read.value.unitFindings,
      ...used.flatMap(({ findings }) => findings),
      ...toleranceFindings(drawing.dimensions, job.sizeShifts),
      ...(oneBlock ? [] : reliefNotes(job)),
      ...cornerChoiceFindings(job.corners.exceptions, drawing.contours),
    ];
    const ownPairs = pairs.map(({ pair: own }) => own);
    const dieSet = planDieSet(
      dieSetQuery(job, clearance.value.choice.perSide, technology.value, {
        piece: pieces(drawn),
        placed: pieces(used),
        pairs: ownPairs,
        strip,
      }),
    );
    const all = [...ofTheJob, ...dieSetFindings(dieSetChecks(job, dieSet, groups, ownPairs))];
    const unproved = asPlan(job, drawing, clearance.value, all, pairs, groups, dieSet.dieSet);
    progress('Proving the programs', used.length / (used.length + 1), unproved);
    const proved = withProofs(unproved, job, prove(unproved, job));
    progress('Done', 1);
    return done(proved);
  };

  return {
    survey: (job, progress = () => undefined) => stages.survey(job, progress),
    followed: (before, job) => {
      const read = [before, job].map((one) => stages.drawing(one, () => undefined));
      const [was, is] = read;
      return was?.ok && is?.ok ? followContours(job, was.value.drawing, is.value.drawing) : { job, lost: [] };
    },
    plan,
    files: (job) => {
      const planned = plan(job);
      return planned.ok ? done(outputFiles(job, planned.value, writeJobFile(job))) : planned;
    },
    verify: (job, text) => {
      const planned = plan(job);
      if (!planned.ok) return planned;
      const { blocks, released } = planned.value;
      const asReleased = { ...planned.value, released: true };
      const expected = blocks.map((block) => ({
        blockId: block.id,
        text: writeProgram(block, asReleased, job),
      }));
      return done(verifyProgram(text, expected, sealOf(job, writeJobFile(job)), released));
    },
    program: (job, blockId) => {
      const planned = plan(job);
      if (!planned.ok) return planned;
      const block = planned.value.blocks.find(({ id }) => id === blockId);
      return block
        ? done(programSheet(block, planned.value, job))
        : failed(
            'block-none',
            `There is no block "${blockId}"`,
            'blocks',
            'Choose one of the blocks of the job.',
          );
    },
  };
}

/** How much of the whole each stage is taken to be. */
const share = { drawing: 0.3, cut: 0.7 } as const;

/** A part rarely has more contours than this; beyond it the oldest are computed anew. */
const pairsRemembered = 400;

/** A job built by a program (or a window) may hold what no job file would: NaN, a negative thickness. */
function checked(job: Job): Result<Job> {
  const result = jobSchema.safeParse(job, { reportInput: true });
  if (result.success) return done(job);
  const [issue] = result.error.issues;
  return failed(
    'job-field',
    `A value of the job cannot be used: ${nameOfPath(issue?.path ?? [], 'the job')} ${issue ? sayIssue(issue) : 'is wrong'}`,
    issue?.path.join('.') ?? '',
    'Enter a number greater than zero, or the value the field had before.',
  );
}
