import { z } from 'zod';

/** mm; no part is larger. */
const positive = z.number().positive().max(10_000);

/** What becomes of a corner's shape. "As drawn" leaves an inside corner to the fillet that the wire leaves anyway. */
const cornerRuleSchema = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('as drawn') }),
  /** The radius that keeps the clearance even against the same corner of the other member. */
  z.strictObject({ rule: z.literal('match') }),
  /** An added radius at an outside corner, an over-size fillet in an inside corner: mm on the member itself. */
  z.strictObject({ rule: z.literal('radius'), radius: positive }),
]);

/** Round outside corners the wire rolls, or runs on along both edges until it meets where they would. */
const cornerPathSchema = z.enum(['rolling', 'sharp']);

/** Rules for a member's corners: *outside* where its steel stands out, *inside* where the wire leaves a fillet. */
const memberCornersSchema = z.strictObject({ outside: cornerRuleSchema, inside: cornerRuleSchema });

/**
 * What a person chose for one corner of the drawing; null: by the rule for all. A corner of the drawing is an inside
 * corner of one member and an outside corner of the other, so it has one rule of each kind. It is known by its contour
 * and its place on it, which no other edit of the job moves.
 */
const cornerExceptionSchema = z.strictObject({
  contourId: z.string(),
  x: z.number(),
  y: z.number(),
  inside: cornerRuleSchema.nullable(),
  outside: cornerRuleSchema.nullable(),
  path: cornerPathSchema.nullable(),
});

export const cornersSchema = z.strictObject({
  punch: memberCornersSchema,
  die: memberCornersSchema,
  path: cornerPathSchema,
  /** How far a sharp path may run past a corner, in offsets of the pass; beyond it is cut off square. */
  miterLimit: z.number().min(1),
  exceptions: z.array(cornerExceptionSchema),
});

export type CornerRule = z.infer<typeof cornerRuleSchema>;
export type CornerPath = z.infer<typeof cornerPathSchema>;
export type MemberCorners = z.infer<typeof memberCornersSchema>;
export type CornerException = z.infer<typeof cornerExceptionSchema>;
export type CornerRules = z.infer<typeof cornersSchema>;

const asDrawn: MemberCorners = { outside: { rule: 'as drawn' }, inside: { rule: 'as drawn' } };

/** All as drawn, the wire rolling; a sharp path whole down to corners of 60° (1 / sin 30° = 2). */
export const newCorners: CornerRules = {
  punch: asDrawn,
  die: asDrawn,
  path: 'rolling',
  miterLimit: 2,
  exceptions: [],
};

/** The rules with the exceptions of one contour only: a choice on one leaves the others' plans as they are. */
export const cornerRulesFor = (rules: CornerRules, contourId: string): CornerRules => ({
  ...rules,
  exceptions: rules.exceptions.filter((exception) => exception.contourId === contourId),
});
