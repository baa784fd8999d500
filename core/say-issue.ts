import type { z } from 'zod';

type Issue = z.core.$ZodIssue;

/** What is wrong with a value that a schema refused, as it reads after the value's name: "must be more than 0". */
export function sayIssue(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined ? 'is missing' : `must be ${kinds[issue.expected] ?? issue.expected}`;
    case 'too_small':
      return `must ${counted(issue.origin, issue.inclusive === false ? 'more than' : 'at least', issue.minimum)}`;
    case 'too_big':
      return `must ${counted(issue.origin, issue.inclusive === false ? 'less than' : 'at most', issue.maximum)}`;
    case 'unrecognized_keys':
      return `has ${issue.keys.map((key) => `"${key}"`).join(', ')}, which is not known here`;
    case 'invalid_value':
      return `must be ${issue.values.map((value) => `"${String(value)}"`).join(' or ')}`;
    case 'invalid_union':
      return 'is none of what is allowed here';
    default:
      return issue.message;
  }
}

const kinds: Readonly<Record<string, string>> = {
  string: 'text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'a group in braces',
  array: 'a list in square brackets',
};

function counted(origin: string, than: string, limit: number | bigint): string {
  const one = Number(limit) === 1;
  if (origin === 'string') return `have ${than} ${limit} ${one ? 'character' : 'characters'}`;
  if (origin === 'array') return `have ${than} ${limit} ${one ? 'entry' : 'entries'}`;
  return `be ${than} ${limit}`;
}
