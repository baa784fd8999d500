import { useState } from 'react';

/** The licences of what others have made and is in the program, read when someone asks for them. */
export function LicenceList() {
  const [text, setText] = useState('');
  const read = (isOpen: boolean): void => {
    if (!isOpen || text !== '') return;
    fetch('licences.txt').then(
      async (reply) =>
        setText(reply.ok ? await reply.text() : 'The list is not there: build the program anew.'),
      () => setText('The list cannot be read: close the window and open it again.'),
    );
  };
  return (
    <details onToggle={(event) => read(event.currentTarget.open)}>
      <summary>Parts made by others, and their licences</summary>
      <pre className="licences" tabIndex={0} aria-label="Licences">
        {text}
      </pre>
    </details>
  );
}
