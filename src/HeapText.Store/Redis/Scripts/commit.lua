-- Takes the whole effect of a turn, or none of it.
-- KEYS  1 farmer, 2 seen, 3 due, 4 members, 5 concerns, 6 farmer count, 7 outbox, 8 answers,
--       9... for each line in ARGV its waiting farmers: replies, reminders, notices
-- ARGV  1 version expected (8 bytes, '' when absent), 2 stored farmer, 3 farmer as member,
--       4 mark ('' when none), 5 at [ms], 6 oldest moment that counts [ms], 7 lifetime of seen marks [ms],
--       8 next due [ms] or '', 9 group or '', 10 concern since [ms] or '',
--       11 answer shown or '', 12 lifetime of answers [ms],
--       13 count of lines n, then n line names, then for each message: not-before [ms], outbox entry
-- Gives 0 committed, 1 duplicate, 2 conflict; or the name of a line whose keys are lacking, with nothing done.
-- Every write after the first succeeds even when memory is full, so the first is the one that may be refused.

local farmer = ARGV[3]
if ARGV[4] ~= '' then
  local seen = redis.call('ZSCORE', KEYS[2], ARGV[4])
  if seen and tonumber(seen) >= tonumber(ARGV[6]) then return 1 end
end
if redis.call('GETRANGE', KEYS[1], 0, 7) ~= ARGV[1] then return 2 end

local lines = {}
local count = tonumber(ARGV[13])
for i = 1, count do lines[ARGV[13 + i]] = 9 + 3 * (i - 1) end

local function waiting(entry)
  local priority, line = string.match(entry, '^%d+ (%d) ([^\n]*)\n')
  return lines[line] and KEYS[lines[line] + tonumber(priority)], line
end

local old = redis.call('ZRANGE', KEYS[7], 0, 0)[1]
local old_waiting, old_line
if old and #ARGV > 13 + count then
  old_waiting, old_line = waiting(old)
  if not old_waiting then return old_line end
end

redis.call('SET', KEYS[1], ARGV[2])
if ARGV[1] == '' then redis.call('INCR', KEYS[6]) end
if ARGV[4] ~= '' then
  redis.call('ZREMRANGEBYSCORE', KEYS[2], '-inf', '(' .. ARGV[6])
  redis.call('ZADD', KEYS[2], ARGV[5], ARGV[4])
  redis.call('PEXPIRE', KEYS[2], ARGV[7])
end
if ARGV[11] ~= '' then
  redis.call('HSET', KEYS[8], ARGV[4], ARGV[11])
  redis.call('PEXPIRE', KEYS[8], ARGV[12])
end
for i = 1, 3 do
  local score = ARGV[7 + i]
  if score == '' then redis.call('ZREM', KEYS[2 + i], farmer) else redis.call('ZADD', KEYS[2 + i], score, farmer) end
end

for i = 14 + count, #ARGV, 2 do redis.call('ZADD', KEYS[7], ARGV[i], ARGV[i + 1]) end
if #ARGV > 13 + count then
  local head = redis.call('ZRANGE', KEYS[7], 0, 0, 'WITHSCORES')
  if head[1] ~= old then
    if old then redis.call('ZREM', old_waiting, farmer) end
    redis.call('ZADD', (waiting(head[1])), head[2], farmer)
  end
end
return 0
