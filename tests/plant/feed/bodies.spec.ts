import Ajv from 'ajv';
import addFormats from 'ajv-formats';
import { openReceiver } from '../../support/receiver';
import { openFeedHouse, wishFor } from '../../support/feed-house';
import schema from '../../reference/cases/cloudevents-1.0-json-schema.json';

/** CloudEvents 1.0, JSON format. The schema lets any name of an extension through; the text of the standard does not. */
describe('what the feed sends', () => {
  it('is CloudEvents 1.0, with names of extensions that the standard allows', async () => {
    const house = await openFeedHouse();
    const receiver = await openReceiver();
    await house.feed().subscribe(wishFor(receiver.url, { fromStart: true }), 'administrator');
    await house.tellSome('T-720');
    await house.feed().noteCheckpoint(await house.small.plant.proof.checkpoint());
    await house.later(0);

    const ajv = new Ajv({ strict: false });
    addFormats(ajv);
    const isCloudEvent = ajv.compile(schema);
    expect(receiver.received.length).toBeGreaterThan(3);
    for (const { event } of receiver.received) {
      expect([isCloudEvent(event), isCloudEvent.errors]).toStrictEqual([true, null]);
      for (const name of Object.keys(event)) expect(name).toMatch(/^[a-z0-9]{1,20}$/);
    }
    await receiver.close();
    await house.clear();
  });

  it('says nothing of who somebody is: no name, no account, no free text, not even sealed', async () => {
    const house = await openFeedHouse();
    const receiver = await openReceiver();
    await house.feed().subscribe(wishFor(receiver.url, { fromStart: true }), 'administrator');
    await house.tellSome('T-721');
    await house.small.tell('start', { serial: 'T-721-A', at: 'chassis' }, 'chassis-lead');
    await house.small.tell(
      'hold',
      { serial: 'T-721-A', reason: 'look-again', note: 'Ask Leon Quick about it' },
      'manager',
    );
    await house.later(0);

    const sent = receiver.received.map(({ body }) => body).join('\n');
    expect(sent).toContain('studbook.record.HoldPlaced.v1');
    expect(sent).not.toMatch(/sealed:v1|Leon|Name of|chassis-lead|"manager"|PersonEnrolled|Mara/);
    await receiver.close();
    await house.clear();
  });
});
