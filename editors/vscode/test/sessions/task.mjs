// The lint task: findings of the whole folder from the program itself.
import { see, seeOnly } from '../patience.mjs';

// By hand: the grade is 98'-0", the footing's underside 95'-0 1/2" less 8", so it is 3'-7 1/2" deep.
const SHALLOW = /footing F1 lies 3'-7 1\/2" below the grade/;

export default async ({ code, cabin, step }) => {
  const lint = async () => {
    await code.command('Tasks: Run Task');
    await code.choose('storyrod');
    await code.choose('storyrod: lint');
  };
  // The terminal of a task may come to the front late, over the problems.
  const problems = async () => {
    await code.showProblems();
    return code.problems();
  };
  const findings = async () => (await problems()).filter((row) => SHALLOW.test(row)).length;

  await step('a file that nobody has open is among the problems without it', async () => {
    await code.open(cabin.name);
    await code.revert();
    await code.replace(cabin.place('frost         $042"'), '42"', '48"');
    await code.save();
    await code.closeAll();
    await seeOnly(findings, 1);
  });

  await step('it does not tell again what the server tells', async () => {
    await lint();
    await see(() => code.texts('.xterm-rows'), /frost-depth/);
    await seeOnly(findings, 1);
  });

  await step('where the server tells of open files only, it tells of the others', async () => {
    await code.toggle('storyrod.wholeWorkspace');
    await seeOnly(findings, 0);
    await lint();
    await seeOnly(() => code.counts(), [1, 0]);
    await see(problems, SHALLOW, 'frost-depth');
  });

  await step('the mended file has no problems when it has run again', async () => {
    cabin.restore();
    await lint();
    await seeOnly(() => code.counts(), [0, 0]);
    await code.toggle('storyrod.wholeWorkspace');
  });
};
