import { expect, test } from 'vitest';
import fc from 'fast-check';
import { cleanFileName, fileNameTrouble } from '../../../electron/services/file-name-trouble';

test('ordinary names are no trouble', () => {
  for (const name of ['spring-paths.DRAFT.dxf', 'Türband 3.nc', 'console.nc', 'a', '部品.dxf']) {
    expect(fileNameTrouble(name)).toBeNull();
  }
});

// Reserved names and characters: Microsoft Learn, "Naming Files, Paths, and Namespaces".
test.each(['CON', 'aux.txt', 'COM1', 'lpt9.nc', 'a<b', 'a|b', 'a?', 'a*', 'a:b', 'tail.', 'tail '])(
  'Windows would not take %j',
  (name) => expect(fileNameTrouble(name)).not.toBeNull(),
);

test('a cleaned name is never trouble, whatever came in', () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom('..', 'nul', '.', '/', 'a/../b')),
      (name) => {
        expect(fileNameTrouble(cleanFileName(name, 'job'))).toBeNull();
      },
    ),
  );
});

test('a cleaned name stays readable', () => {
  expect(cleanFileName('bell/striker: 2', 'job')).toBe('bell-striker- 2');
  expect(cleanFileName('', 'job')).toBe('job');
});
