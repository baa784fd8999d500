import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { iconPng, iconSvg } from './draw-icon';
import { projectFolder } from './run-command';

/** `npm run icon`: draws build/icon/icon.svg and icon.png anew. */
const folder = join(projectFolder, 'build/icon');
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'icon.svg'), iconSvg());
writeFileSync(join(folder, 'icon.png'), iconPng(1024));
