-- Finds what a reference leads to; keeps the receipt for it where it leads to nothing yet.
-- KEYS  1 early receipt, 2... references of a day, newest first
-- ARGV  1 mark, 2 early receipt, 3 1 when it is delivered else 0, 4 lifetime of early receipts [ms]
-- Gives what the reference leads to, or false. Of early receipts the first is kept, unless a later one is delivered.

for i = 2, #KEYS do
  local found = redis.call('HGET', KEYS[i], ARGV[1])
  if found then return found end
end
if ARGV[3] == '1' then
  redis.call('SET', KEYS[1], ARGV[2], 'PX', ARGV[4])
else
  redis.call('SET', KEYS[1], ARGV[2], 'PX', ARGV[4], 'NX')
end
return false
