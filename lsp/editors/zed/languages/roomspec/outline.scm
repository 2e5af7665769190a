(heading (name) @name) @item
