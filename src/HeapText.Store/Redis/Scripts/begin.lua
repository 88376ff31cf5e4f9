-- Reads what a turn starts from.
-- KEYS  1 farmer, 2 seen, 3 answers
-- ARGV  1 mark of the message ('' when none starts the turn), 2 oldest moment that counts [ms],
--       3 oldest moment of an answer that counts [ms]
-- Gives {stored farmer or false, 1 when the mark was seen else 0, screen it was answered with or false}

local seen = ARGV[1] ~= '' and redis.call('ZSCORE', KEYS[2], ARGV[1])
local screen = seen and tonumber(seen) >= tonumber(ARGV[3]) and redis.call('HGET', KEYS[3], ARGV[1])
return {redis.call('GET', KEYS[1]), seen and tonumber(seen) >= tonumber(ARGV[2]) and 1 or 0, screen}
