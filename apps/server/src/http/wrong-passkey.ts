import { Problem } from './problem';

export const wrongPasskey = (status: 401 | 422 = 401): Problem =>
  new Problem({
    status,
    code: 'passkey-wrong',
    title: 'That passkey opens nothing here',
    errors: [{ pointer: '#/answer', detail: 'is nobody’s, or no answer to an open question' }],
  });
