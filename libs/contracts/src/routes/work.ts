import * as shapes from '../shapes';
import { tell } from './route';

/** Telling and asking at a station, and putting it right. */
export const workRoutes = {
  work: tell('/api/work', 'Tell that work was done', { body: shapes.WorkRequest, answer: shapes.WorkAnswer }),
  asking: tell(
    '/api/askings',
    'Ask whether you may go on: cleared or refused',
    { body: shapes.AskingRequest, answer: shapes.AskingAnswer },
    {
      status: 200,
    },
  ),
  signOff: tell('/api/sign-offs', 'Sign a station off: all as planned, except', {
    body: shapes.SignOffRequest,
    answer: shapes.WorkAnswer,
  }),
  wrongSerial: tell('/api/corrections/serial', 'Put a wrong serial right', {
    body: shapes.WrongSerialRequest,
    answer: shapes.WorkAnswer,
  }),
  correction: tell('/api/corrections/values', 'Put recorded values right', {
    body: shapes.ValueCorrectionRequest,
    answer: shapes.WorkAnswer,
  }),
} as const;
