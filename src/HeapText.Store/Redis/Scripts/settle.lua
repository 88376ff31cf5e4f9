-- Ends a taken message. Only its latest taking may postpone it or give it up; that it was sent is believed of any.
-- KEYS  1 outbox, 2 messages given up, 3 log of sent messages,
--       4... for each line in ARGV its waiting farmers: replies, reminders, notices
-- ARGV  1 farmer as member, 2 message id, 3 attempt, 4 'sent', 'retry', 'back' or 'aside',
--       5 moment of 'retry' and 'back' [ms], 6 entry given up or sent, or not-before of what is put back [ms], 7 how many of those are kept, 8 sent at [s], 9 oldest sent that counts [s],
--       10 lifetime of the log [ms], 11... line names, that of the message first
-- Gives 1 settled, 0 no longer there; or the name of a line whose keys are lacking, with nothing done.

local heads = redis.call('ZRANGE', KEYS[1], 0, 1, 'WITHSCORES')
if #heads == 0 or tonumber(heads[2]) >= 0 then return 0 end

local function parts(entry)
  local priority, line, id = string.match(entry, '^%d+ (%d) ([^\n]*)\n([^\n]*)\n')
  for i = 11, #ARGV do
    if ARGV[i] == line then return KEYS[4 + 3 * (i - 11) + tonumber(priority)], line, id end
  end
  return nil, line, id
end

local waiting, _, id = parts(heads[1])
if id ~= ARGV[2] then return 0 end
if ARGV[4] ~= 'sent' and -tonumber(heads[2]) ~= tonumber(ARGV[3]) then return 0 end
if ARGV[4] == 'retry' or ARGV[4] == 'back' then
  redis.call('ZREM', waiting, ARGV[1])
  redis.call('ZADD', waiting, ARGV[5], ARGV[1])
  if ARGV[4] == 'back' then
    local before = tonumber(heads[2]) + 1
    redis.call('ZADD', KEYS[1], before < 0 and string.format('%.0f', before) or ARGV[6], heads[1])
  end
  return 1
end

local next_waiting, next_line
if heads[3] then
  next_waiting, next_line = parts(heads[3])
  if not next_waiting then return next_line end
end
redis.call('ZREM', KEYS[1], heads[1])
redis.call('ZREM', waiting, ARGV[1])
if next_waiting then redis.call('ZADD', next_waiting, heads[4], ARGV[1]) end
if ARGV[4] == 'aside' then
  redis.call('LPUSH', KEYS[2], ARGV[6])
  redis.call('LTRIM', KEYS[2], 0, tonumber(ARGV[7]) - 1)
else
  redis.call('ZADD', KEYS[3], ARGV[8], ARGV[6])
  redis.call('ZREMRANGEBYSCORE', KEYS[3], '-inf', '(' .. ARGV[9])
  redis.call('ZREMRANGEBYRANK', KEYS[3], 0, -tonumber(ARGV[7]) - 1)
  redis.call('PEXPIRE', KEYS[3], ARGV[10])
end
return 1
