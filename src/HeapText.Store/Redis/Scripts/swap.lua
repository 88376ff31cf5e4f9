-- Puts an entry of a farmer's log in the place of the one before it, at the same moment.
-- KEYS  1 log
-- ARGV  1 entry before, 2 entry after
-- Gives 1, or 0 when the entry before is no longer there. The removal comes first: it is allowed when memory is full.

local at = redis.call('ZSCORE', KEYS[1], ARGV[1])
if not at then return 0 end
redis.call('ZREM', KEYS[1], ARGV[1])
redis.call('ZADD', KEYS[1], at, ARGV[2])
return 1
