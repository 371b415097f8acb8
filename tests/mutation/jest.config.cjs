const base = require('../../jest.config.js');

/** One file of tests, and no others. */
module.exports = {
  ...base,
  rootDir: '../..',
  testMatch: ['<rootDir>/tests/mutation/rulebook-tests.ts'],
};
