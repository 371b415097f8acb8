import { dependencies, devDependencies } from '../../package.json';

describe('what a newcomer installs', () => {
  /** `npm start` leaves the tools of tests out and builds all the same. */
  it('has the types of every package that the build reads', () => {
    const built = new Set(Object.keys(dependencies));
    const missing = Object.keys(devDependencies).filter(
      (name) => name.startsWith('@types/') && built.has(name.slice('@types/'.length)),
    );
    expect(missing).toStrictEqual([]);
  });
});
