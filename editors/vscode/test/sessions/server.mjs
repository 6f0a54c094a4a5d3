// A workbench without a server, with one by the setting, with one on the path, and a new one.
import { see, seeOnly, until } from '../patience.mjs';
import { STORYROD } from '../spec.mjs';

export default async ({ code, machine, house, step }) => {
  const servers = () => machine.languageServers().map(({ pid }) => pid);
  const checked = async () => {
    await code.open(house.name);
    await see(() => code.lenses(), /^finish 100'-0 3\/4"/);
  };

  await step('without a server one is told so, and what to do', async () => {
    await code.open(house.name);
    await see(() => code.messages(), /no server: the program storyrod is not on PATH.*nothing is checked/);
    await see(() => code.lines(), /^project "Loon Cove"/);
  });

  await step('the message tells how to install it', async () => {
    await code.page.locator('.notification-list-item-buttons-container a', { hasText: 'How to install' }).click();
    await see(() => code.lines(), 'cargo install');
    await code.closeTab();
  });

  await step('the message leads to the setting', async () => {
    await code.command('Storyrod: Restart Server');
    await code.page.locator('.notification-list-item-buttons-container a', { hasText: 'Open settings' }).first().click();
    await see(() => code.texts('.settings-editor [data-key="storyrod.server.path"]'), 'The whole path of the program');
    await code.closeTab();
  });

  await step('with its path in the settings it starts', async () => {
    await code.set('storyrod.server.path', STORYROD);
    await seeOnly(() => servers().length, 1);
    await checked();
  });

  await step('a wrong path is told', async () => {
    await code.set('storyrod.server.path', '/nowhere/storyrod');
    await see(() => code.messages(), /names no program: \/nowhere\/storyrod/);
    await seeOnly(servers, []);
    await seeOnly(async () => (await code.messages()).length, 1);
  });

  await step('without a setting the one on the path starts', async () => {
    machine.putServer();
    await code.set('storyrod.server.path', '');
    await seeOnly(() => servers().length, 1);
    await checked();
    await code.command('Notifications: Clear All Notifications');
  });

  await step('restarted it is a new one', async () => {
    const [old] = servers();
    await code.command('Storyrod: Restart Server');
    await until('another process', () => servers().length === 1 && servers()[0] !== old);
    await checked();
  });

  await step('one that breaks off is started again', async () => {
    const [old] = servers();
    process.kill(old, 'SIGKILL');
    await until('another process', () => servers().length === 1 && servers()[0] !== old);
    await checked();
  });
};
