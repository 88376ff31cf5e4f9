-- Reads all that belongs to a farmer at one moment.
-- KEYS  1 farmer, 2 seen, 3 answers, 4 outbox, 5 log of sent messages, 6 due, 7 members, 8 concerns
-- ARGV  1 farmer as member
-- Gives {stored farmer or false, seen with moments, answers by mark, outbox with scores, log with moments,
--        due or false, group or false, concern since or false}

return {
  redis.call('GET', KEYS[1]),
  redis.call('ZRANGE', KEYS[2], 0, -1, 'WITHSCORES'),
  redis.call('HGETALL', KEYS[3]),
  redis.call('ZRANGE', KEYS[4], 0, -1, 'WITHSCORES'),
  redis.call('ZRANGE', KEYS[5], 0, -1, 'WITHSCORES'),
  redis.call('ZSCORE', KEYS[6], ARGV[1]),
  redis.call('ZSCORE', KEYS[7], ARGV[1]),
  redis.call('ZSCORE', KEYS[8], ARGV[1]),
}
