-- Grants what a line may send now of the messages asked for, and charges it.
-- KEYS  1 charges of the line, 2 segments the line has sent today, 3 segments all lines have sent today
-- ARGV  1 now [ms], 2 window [ms], 3 segments to a window, 4 most windows ahead, 5 lifetime of a day's counts [ms],
--       6-8 what replies, reminders and notices may bring KEYS[2] to, or -1, 9-11 the same of KEYS[3],
--       12... for each message: priority, segments
-- Gives {messages granted, segments that may go beside them, last priority the day lets go or -1,
--        moment when there is more room [ms]}

local now, window, most = tonumber(ARGV[1]), tonumber(ARGV[2]), tonumber(ARGV[3])
local of_line = tonumber(redis.call('GET', KEYS[2]) or 0)
local of_all = tonumber(redis.call('GET', KEYS[3]) or 0)
local first, last = now - window, now + window * tonumber(ARGV[4])
local charges = redis.call('ZRANGEBYSCORE', KEYS[1], '(' .. string.format('%.0f', first),
  string.format('%.0f', last), 'WITHSCORES')
local room, earliest, number = most, nil, 0
for i = 1, #charges, 2 do
  local id, segments = string.match(charges[i], '^(%d+) (%d+)$')
  room = room - tonumber(segments)
  number = math.max(number, tonumber(id))
  earliest = earliest or tonumber(charges[i + 1])
end

local function fits(priority, segments)
  local cap_line, cap_all = tonumber(ARGV[6 + priority]), tonumber(ARGV[9 + priority])
  return (cap_line < 0 or of_line + segments <= cap_line) and (cap_all < 0 or of_all + segments <= cap_all)
end

local granted, total, added = 0, 0, {}
for i = 12, #ARGV, 2 do
  local segments = tonumber(ARGV[i + 1])
  if not fits(tonumber(ARGV[i]), segments) or (segments > room and room < most) then break end
  granted, total = granted + 1, total + segments
  of_line, of_all, room = of_line + segments, of_all + segments, room - segments
  earliest = earliest or now
  local at = now
  while segments > 0 do
    number = number + 1
    added[#added + 1] = string.format('%.0f', at)
    added[#added + 1] = string.format('%d %d', number, math.min(segments, most))
    segments, at = segments - most, at + window
  end
end

if granted > 0 then
  redis.call('ZREMRANGEBYSCORE', KEYS[1], '-inf', string.format('%.0f', first))
  redis.call('ZREMRANGEBYSCORE', KEYS[1], '(' .. string.format('%.0f', last), '+inf')
  redis.call('ZADD', KEYS[1], unpack(added))
  redis.call('PEXPIRE', KEYS[1], math.max(60000, window * tonumber(ARGV[4])))
  for i = 2, 3 do
    redis.call('INCRBY', KEYS[i], total)
    redis.call('PEXPIRE', KEYS[i], ARGV[5])
  end
end

local through = -1
for priority = 0, 2 do
  if fits(priority, 1) then through = priority end
end
return {granted, math.max(0, room), through, string.format('%.0f', earliest and math.max(now, earliest + window) or now)}
