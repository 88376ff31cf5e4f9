using HeapText.Carriers.Smpp.Wire;
using HeapText.Dialog.Ports;

namespace HeapText.Carriers.Smpp;

/// <summary>Takes steps of dialled sessions, and sends the screens back.</summary>
/// <remarks>Which operation opens, carries on and ends a session: 3GPP TS 23.090 and SMPP 3.4, section 5.3.2.44, from
/// memory. A phone's request (PSSR indication) is answered by a request of ours (USSR request) while the session goes
/// on, which the phone answers (USSR confirm), and by a PSSR response when it ends.</remarks>
internal sealed class InboundScreens(
    SmppLineOptions options, IReceiver receiver, OutboundParts parts, Unsettled unsettled, TimeProvider time)
{
    private readonly ScreenSessions _sessions = new(time);

    /// <summary>Takes an entry; its screen goes out after the delivery was answered.</summary>
    /// <returns>What to send once it is; null for nothing.</returns>
    public async Task<MessageBody?> Take(
        Delivery delivery, UssdServiceOp operation, Msisdn from, CancellationToken cancel)
    {
        var body = delivery.Body;
        var opens = operation is UssdServiceOp.PssrIndication or UssdServiceOp.PssdIndication;
        if (body.Tlvs.ItsSessionInfo is { Ends: true } || (!opens && operation != UssdServiceOp.UssrConfirm))
        {
            _sessions.End(body);
            return null;
        }

        var id = unsettled.Claim(delivery, Fingerprint.Of(body));
        var (session, step) = _sessions.Step(body, id, opens);
        var input = step == 1 ? "" : UserData.Of(body, options.Alphabet).Text;
        var (screen, _) = await receiver.Dial(new Dialled(session, step, options.Name, from, input), cancel);
        if (!screen.Open) _sessions.End(body);
        var info = body.Tlvs.ItsSessionInfo is { } given
            ? new ItsSessionInfo(given.Session, (byte)(step & 0x7F), Ends: !screen.Open)
            : (ItsSessionInfo?)null;
        return parts.Screen(
            body, screen.Text, screen.Open ? UssdServiceOp.UssrRequest : UssdServiceOp.PssrResponse, info);
    }
}
