import { Menu, type MenuItemConstructorOptions } from 'electron';

/**
 * The page has its own bar and keys, so that both hosts are alike; a native menu would take its undo keys away. macOS
 * cannot be without a menu: there it holds what the system expects and nothing of the job.
 */
export function setMenu(platform = process.platform): void {
  const edit: MenuItemConstructorOptions = {
    label: 'Edit',
    submenu: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }],
  };
  Menu.setApplicationMenu(
    platform === 'darwin'
      ? Menu.buildFromTemplate([{ role: 'appMenu' }, edit, { role: 'windowMenu' }])
      : null,
  );
}
